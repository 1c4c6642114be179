/** Has the browser save what lies at an address of this page, as if a link to it had been followed. */
export function saveAs(name: string, address: string): void {
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
}
