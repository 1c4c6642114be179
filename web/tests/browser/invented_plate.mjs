/** "fish, potatoes, beans" on an invented plate, drawn by the browser: a JPEG for the field of a file. */
export async function inventedPlate(page) {
  const drawn = await page.evaluate(() => {
    const canvas = document.createElement("canvas");
    canvas.width = 400;
    canvas.height = 300;
    const pen = canvas.getContext("2d");
    pen.scale(0.5, 0.5);
    pen.fillStyle = "#b58b5a"; // the table
    pen.fillRect(0, 0, 800, 600);
    const round = (colour, x, y, wide, high, turned = 0) => {
      pen.fillStyle = colour;
      pen.beginPath();
      pen.ellipse(x, y, wide, high, turned, 0, 7);
      pen.fill();
    };
    round("#e3dccf", 400, 300, 270, 270);
    round("#f7f3ea", 400, 300, 250, 250);
    round("#efe7d6", 400, 300, 190, 190);
    for (const [x, y] of [[330, 210], [410, 190], [370, 270]]) round("#e0b95b", x, y, 52, 40, 0.4); // potatoes
    round("#c9c3ba", 480, 330, 120, 45, -0.5); // fish
    round("#b3aca1", 470, 325, 90, 6, -0.5);
    for (let i = 0; i < 9; i += 1) round("#4f7d3a", 285 + 14 * i, 385 + (i % 3) * 18, 42, 7, 0.3 + 0.2 * (i % 2)); // beans
    pen.fillStyle = "#4a3620";
    pen.font = "28px sans-serif";
    pen.fillText("invented", 20, 580);
    return canvas.toDataURL("image/jpeg");
  });
  return { name: "invented.jpg", mimeType: "image/jpeg", buffer: Buffer.from(drawn.split(",")[1], "base64") };
}
