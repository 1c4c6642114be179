// A figure from the server becomes nodes of the page by this list alone: whatever is not on it is left out.

const elements = new Set([
  "svg", "title", "desc", "defs", "pattern", "g", "rect", "circle", "ellipse", "line", "path", "polyline", "polygon",
  "text", "tspan", "clipPath",
]);
const attributes = new Set([
  "viewBox", "width", "height", "x", "y", "x1", "y1", "x2", "y2", "cx", "cy", "r", "rx", "ry", "d", "points",
  "fill", "fill-opacity", "stroke", "stroke-width", "stroke-dasharray", "stroke-linecap", "stroke-linejoin",
  "stroke-opacity", "opacity", "transform", "patternUnits", "patternTransform", "font-size", "font-weight",
  "font-family", "text-anchor", "dominant-baseline", "id", "clip-path", "role",
]);
const namespace = "http://www.w3.org/2000/svg";
const ownReference = /^url\(#([\w-]+)\)$/;

/** Whether an attribute may be taken over: on the list, and pointing nowhere but into its own figure. */
export function mayHave(name: string, value: string): boolean {
  if (!attributes.has(name)) return false;
  return !/url\s*\(/i.test(value) || ownReference.test(value);
}

export function mayStand(element: string): boolean {
  return elements.has(element);
}

function copy(from: Element, into: Node, prefix: string): void {
  for (const child of Array.from(from.childNodes)) {
    if (child.nodeType === Node.TEXT_NODE) {
      into.appendChild(document.createTextNode(child.nodeValue ?? ""));
    } else if (child instanceof Element && child.namespaceURI === namespace && mayStand(child.localName)) {
      into.appendChild(copied(child, prefix));
    }
  }
}

function copied(from: Element, prefix: string): SVGElement {
  const element = document.createElementNS(namespace, from.localName);
  for (const { name, value } of Array.from(from.attributes)) {
    if (!mayHave(name, value)) continue;
    const own = name === "id" ? prefix + value : value.replace(ownReference, `url(#${prefix}$1)`);
    element.setAttribute(name, own);
  }
  copy(from, element, prefix);
  return element;
}

/** The figure as nodes; null if it is not an SVG. `prefix` keeps its ids apart from other figures'. */
export function safeSvg(markup: string, prefix: string): SVGElement | null {
  const root = new DOMParser().parseFromString(markup, "image/svg+xml").documentElement;
  if (root.localName !== "svg" || root.namespaceURI !== namespace) return null;
  return copied(root, prefix);
}
