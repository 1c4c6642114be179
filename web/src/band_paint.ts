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

/** The ground of each band, painted once for its size and laid under each frame. `edges` rise; `bands` are one more. */
export class BandGround {
  private painted: HTMLCanvasElement | null = null;

  constructor(
    private readonly edges: number[],
    private readonly bands: string[],
    private readonly colour: (name: string) => string,
  ) {}

  /** As when the inks change by night. */
  forget(): void {
    this.painted = null;
  }

  lay(plot: uPlot): void {
    const { ctx, bbox } = plot;
    if (bbox.width <= 0 || bbox.height <= 0) return;
    if (this.painted?.width !== bbox.width || this.painted.height !== bbox.height) this.paint(plot);
    if (this.painted) ctx.drawImage(this.painted, bbox.left, bbox.top);
  }

  private paint(plot: uPlot): void {
    const { width, height, top } = plot.bbox;
    const canvas = document.createElement("canvas");
    canvas.width = width;
    canvas.height = height;
    const pen = canvas.getContext("2d");
    if (!pen) return;
    const heights = this.edges.map((edge) => plot.valToPos(edge, "y", true) - top);
    this.bands.forEach((band, at) => {
      const low = at === 0 ? height : (heights[at - 1] ?? height);
      const high = heights[at] ?? 0;
      pen.fillStyle = patternOf(pen, band, this.colour);
      pen.fillRect(0, high, width, low - high);
    });
    this.painted = canvas;
  }
}
