import type uPlot from "uplot";
import type { Surroundings } from "./replies";
import type { Stretch } from "./stretch";
import { daysApart } from "./tick_choice";

type Colour = (name: string) => string;

/** Narrower days than this, in pixels, would be all lines: only those whose names have room keep theirs. */
const narrowest = 12;

/** A line where a civil day begins. */
export function paintBorders(plot: uPlot, trace: Surroundings, shown: Stretch, colour: Colour): void {
  const { ctx, bbox } = plot;
  ctx.save();
  ctx.strokeStyle = colour("--line");
  ctx.lineWidth = devicePixelRatio / 2;
  const width = bbox.width / devicePixelRatio;
  const each = (86_400 / (shown.to - shown.from)) * width < narrowest ? daysApart(shown, width) : 1;
  for (const [day, border] of trace.day_borders.entries()) {
    if (day % each !== 0) continue;
    if (border.at <= shown.from || border.at >= shown.to) continue;
    const x = Math.round(plot.valToPos(border.at, "x", true)) + 0.5;
    ctx.beginPath();
    ctx.moveTo(x, bbox.top);
    ctx.lineTo(x, bbox.top + bbox.height);
    ctx.stroke();
  }
  ctx.restore();
}

/** A diamond for each finger-prick: another instrument than the line, so another shape. */
export function paintPricks(plot: uPlot, trace: Surroundings, shown: Stretch, colour: Colour): void {
  const { ctx } = plot;
  const half = 5 * devicePixelRatio;
  ctx.save();
  ctx.strokeStyle = colour("--text");
  ctx.fillStyle = colour("--paper");
  ctx.lineWidth = 1.5 * devicePixelRatio;
  for (const prick of trace.finger_pricks) {
    if (prick.at < shown.from || prick.at > shown.to) continue;
    const x = plot.valToPos(prick.at, "x", true);
    const y = plot.valToPos(prick.value, "y", true);
    ctx.beginPath();
    ctx.moveTo(x, y - half);
    ctx.lineTo(x + half, y);
    ctx.lineTo(x, y + half);
    ctx.lineTo(x - half, y);
    ctx.closePath();
    ctx.fill();
    ctx.stroke();
  }
  ctx.restore();
}
