// Before anything is painted, so that a dark page never flashes white.
document.documentElement.dataset.theme = localStorage.getItem("boardwright.theme") ?? "auto";
