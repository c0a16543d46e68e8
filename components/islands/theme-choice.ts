/**
 * The choice of paper, night, or what the device says. The choice is kept on this device where storage is allowed; where it
 * is not, it holds for the page. `early-theme.ts` applies it before the first paint.
 */
class ThemeChoice extends HTMLElement {
  connectedCallback(): void {
    const select = this.querySelector('select');
    if (!select) return;
    this.hidden = false;
    select.value = document.documentElement.dataset['theme'] ?? 'device';
    select.addEventListener('change', () => choose(select.value));
  }
}

function choose(theme: string): void {
  if (theme === 'device') delete document.documentElement.dataset['theme'];
  else document.documentElement.dataset['theme'] = theme;
  try {
    if (theme === 'device') localStorage.removeItem('theme');
    else localStorage.setItem('theme', theme);
  } catch {
    // Storage is blocked: the choice holds until the page is left.
  }
}

customElements.define('theme-choice', ThemeChoice);
