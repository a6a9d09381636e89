// Hands a file to the person: it goes where their browser puts downloads.

/** How long a browser may take to begin a download, ms: then its memory is given back. */
const TAKEN = 60_000;

export function saveFile(file: Blob, name: string): void {
  const url = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), TAKEN);
}
