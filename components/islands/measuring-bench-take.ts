/** Hands a file to the user. */
export function download(content: Blob, name: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(content);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

/** Puts a text on the clipboard; false where the browser does not let the page. */
export async function copyText(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}

/** Asks before something is lost. */
export function askFirst(dialog: HTMLDialogElement, question: string): Promise<boolean> {
  dialog.querySelector('[data-ask-text]')!.textContent = question;
  dialog.returnValue = 'no';
  dialog.showModal();
  return new Promise((resolve) =>
    dialog.addEventListener('close', () => resolve(dialog.returnValue === 'yes'), { once: true }),
  );
}
