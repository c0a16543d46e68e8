/** The address of a page under the base path of the site: `href('reed-trunks', 'es')` is `/base/reed-trunks/es/`. */
export function href(...parts: string[]): string {
  const base = import.meta.env.BASE_URL.replace(/\/$/, '');
  const path = parts.filter((part) => part !== '').join('/');
  return path === '' ? `${base}/` : `${base}/${path}/`;
}
