import type uPlot from "uplot";

// Beyond the range the ground carries a pattern, in the order of the papers: dense hatch, hatch, plain,
// dots, dense dots. The pattern tells them apart without colour.

interface Ground {
  kind: "hatch" | "dots" | "plain";
  spacing: number;
}

const grounds: Record<string, Ground> = {
  "very low": { kind: "hatch", spacing: 4 },
  low: { kind: "hatch", spacing: 9 },
  "in range": { kind: "plain", spacing: 0 },
  high: { kind: "dots", spacing: 9 },
  "very high": { kind: "dots", spacing: 5 },
};

function patternOf(context: CanvasRenderingContext2D, band: string, colour: (name: string) => string): string | CanvasPattern {
  const name = band.replace(" ", "-");
  const base = colour(`--ground-${name}`);
  const ground = grounds[band];
  if (!ground || ground.kind === "plain") return base;
  const scale = devicePixelRatio;
  const size = Math.round(ground.spacing * scale);
  const tile = document.createElement("canvas");
  tile.width = tile.height = size;
  const pen = tile.getContext("2d");
  if (!pen) return base;
  pen.fillStyle = base;
  pen.fillRect(0, 0, size, size);
  pen.fillStyle = pen.strokeStyle = colour(`--mark-${name}`);
  if (ground.kind === "dots") {
    pen.beginPath();
    pen.arc(size / 2, size / 2, 0.9 * scale, 0, 2 * Math.PI);
    pen.fill();
  } else {
    pen.lineWidth = 0.8 * scale;
    pen.beginPath();
    for (const shift of [-size, 0, size]) {
      pen.moveTo(shift, size);
      pen.lineTo(shift + size, 0);
    }
    pen.stroke();
  }
  return context.createPattern(tile, "repeat") ?? base;
}

/** Paints the ground of each band over the plot's own box. `edges` rise; `bands` are one more. */
export function paintBands(plot: uPlot, edges: number[], bands: string[], colour: (name: string) => string): void {
  const { ctx, bbox } = plot;
  const heights = edges.map((edge) => plot.valToPos(edge, "y", true));
  const bottom = bbox.top + bbox.height;
  ctx.save();
  ctx.beginPath();
  ctx.rect(bbox.left, bbox.top, bbox.width, bbox.height);
  ctx.clip();
  bands.forEach((band, at) => {
    const low = at === 0 ? bottom : (heights[at - 1] ?? bottom);
    const high = heights[at] ?? bbox.top;
    ctx.fillStyle = patternOf(ctx, band, colour);
    ctx.fillRect(bbox.left, high, bbox.width, low - high);
  });
  ctx.restore();
}
