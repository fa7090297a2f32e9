using System.CommandLine;
using Boardwright.App.Reports;

namespace Boardwright.App.Commands;

/// <summary><c>completion</c>: prints a script that lets a shell complete commands, options, ids and board files.</summary>
static class CompletionCommand
{
    /// <summary>The command.</summary>
    public static Command Create(Terminal terminal, RootCommand root)
    {
        var shell = new Argument<string>("SHELL") { Description = "bash, zsh, fish or pwsh.", HelpName = "bash|zsh|fish|pwsh" };
        shell.AcceptOnlyFromAmong("bash", "zsh", "fish", "pwsh");
        var command = new Verb(
            "completion", "Prints a script that completes commands, options, ids and board files in a shell.",
            "eval \"$(boardwright completion bash)\"",
            "boardwright completion zsh > ~/.zfunc/_boardwright",
            "boardwright completion fish > ~/.config/fish/completions/boardwright.fish",
            "boardwright completion pwsh | Out-String | Invoke-Expression")
        { shell };
        command.SetAction(parsed =>
        {
            terminal.Out.Write(Script(parsed.GetRequiredValue(shell), [.. root.Subcommands.Select(c => c.Name)]));
            return Exit.Holds;
        });
        return command;
    }

    /// <summary>Files that a board may be read from, and folders on the way to them.</summary>
    public static IEnumerable<string> BoardFiles(string word)
    {
        var cut = word.LastIndexOf('/') + 1;
        var (start, name) = (word[..cut], word[cut..]);
        var place = start.Length > 0 ? start : ".";
        if (!Directory.Exists(place))
            return [];
        var folders = Directory.EnumerateDirectories(place).Select(p => Path.GetFileName(p) + "/")
            .Where(n => n[0] != '.' || name.StartsWith('.'));
        var files = Directory.EnumerateFiles(place, "*.board.yaml").Select(p => Path.GetFileName(p)!);
        return folders.Concat(files).Where(n => n.StartsWith(name, StringComparison.Ordinal)).Order(StringComparer.Ordinal)
            .Select(n => start + n);
    }

    /// <summary>The script for a shell.</summary>
    /// <remarks>The first word comes from a list in the script; anything further is asked of the program.</remarks>
    public static string Script(string shell, IReadOnlyList<string> commands) => (shell switch
    {
        "bash" => Bash,
        "zsh" => Zsh,
        "fish" => Fish,
        _ => Pwsh,
    }).Replace("COMMANDS", string.Join(' ', commands), StringComparison.Ordinal);

    const string Bash = """
        # Completion of boardwright in bash. For every session, add to ~/.bashrc:
        #   eval "$(boardwright completion bash)"
        _boardwright() {
            local word="${COMP_WORDS[COMP_CWORD]}" line="${COMP_LINE:0:COMP_POINT}" offer
            COMPREPLY=()
            if ((COMP_CWORD == 1)) && [[ $word != -* ]]; then
                mapfile -t COMPREPLY < <(compgen -W 'COMMANDS' -- "$word")
                return
            fi
            line="${line#* }"
            while IFS= read -r offer; do
                [[ $offer == "$word"* ]] || continue
                [[ $offer == -* && $word != -* ]] && continue
                COMPREPLY+=("$offer")
            done < <(boardwright "[suggest:${#line}]" "$line" 2>/dev/null)
            if [[ ${#COMPREPLY[@]} -eq 1 && ${COMPREPLY[0]} == */ ]]; then
                compopt -o nospace
            fi
        }
        complete -o filenames -F _boardwright boardwright

        """;

    const string Zsh = """
        #compdef boardwright
        # Completion of boardwright in zsh: save as _boardwright in a folder of $fpath.
        _boardwright() {
            local word="${words[CURRENT]}" line="${(j: :)words[2,CURRENT]}"
            local -a offers folders
            if (( CURRENT == 2 )) && [[ $word != -* ]]; then
                offers=(COMMANDS)
                compadd -- $offers
                return
            fi
            offers=("${(@f)$(boardwright "[suggest:${#line}]" "$line" 2>/dev/null)}")
            [[ $word == -* ]] || offers=("${(@)offers:#-*}")
            folders=(${(M)offers:#*/})
            offers=(${offers:#*/})
            compadd -S '' -- $folders
            compadd -- $offers
        }
        if [[ $zsh_eval_context[-1] == loadautofunc ]]; then
            _boardwright "$@"
        else
            compdef _boardwright boardwright
        fi

        """;

    const string Fish = """
        # Completion of boardwright in fish: save as ~/.config/fish/completions/boardwright.fish
        function __boardwright_offers
            set -l words (commandline -opc)
            set -l word (commandline -ct)
            set -l line (string join ' ' -- $words[2..-1] $word)
            set -l offers (boardwright "[suggest:"(string length -- $line)"]" $line 2>/dev/null)
            if not string match -q -- '-*' $word
                set offers (string match -v -- '-*' $offers)
            end
            printf '%s\n' $offers
        end
        complete -c boardwright -f
        complete -c boardwright -n __fish_use_subcommand -a 'COMMANDS'
        complete -c boardwright -n 'not __fish_use_subcommand' -a '(__boardwright_offers)'

        """;

    const string Pwsh = """
        # Completion of boardwright in PowerShell. For every session, add to $PROFILE:
        #   boardwright completion pwsh | Out-String | Invoke-Expression
        Register-ArgumentCompleter -Native -CommandName boardwright -ScriptBlock {
            param($word, $tree, $position)
            $line = $tree.ToString().PadRight($position)
            $line = $line.Substring(0, $position) -replace '^\S+\s*', ''
            if ($line -notmatch '\s' -and $word -notlike '-*') {
                $offers = -split 'COMMANDS'
            } else {
                $offers = boardwright "[suggest:$($line.Length)]" $line 2>$null
            }
            $offers | Where-Object { $_ -like "$word*" -and ($word -like '-*' -or $_ -notlike '-*') } | ForEach-Object {
                [System.Management.Automation.CompletionResult]::new($_, $_, 'ParameterValue', $_)
            }
        }

        """;
}
