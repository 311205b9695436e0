/** Hands a file to the pilot as a download. */
export function saveFile(content: Blob, name: string): void {
  const address = URL.createObjectURL(content);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The download has its own hold on the content by the next turn.
  setTimeout(() => {
    URL.revokeObjectURL(address);
  }, 1000);
}
