// Sets the chosen ground before the first paint; a file of its own because the page allows no inline script.
try {
  const theme = localStorage.getItem('joggle-theme');
  if (theme === 'light' || theme === 'dark') document.documentElement.dataset.theme = theme;
} catch {
  // A browser that refuses storage follows the system.
}
