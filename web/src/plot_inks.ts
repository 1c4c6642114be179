/** The page's inks by name, read once: asking the browser for them in each frame would make it lay the page out anew. */
export class PlotInks {
  private readonly known = new Map<string, string>();

  readonly of = (name: string): string => {
    let ink = this.known.get(name);
    if (ink === undefined) {
      ink = getComputedStyle(document.documentElement).getPropertyValue(name).trim();
      this.known.set(name, ink);
    }
    return ink;
  };

  /** As when the inks change by night. */
  forget(): void {
    this.known.clear();
  }
}
