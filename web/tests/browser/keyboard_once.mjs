/**
 * Does something, and tells where the keyboard stands the very moment the page shows what the selector names, or no
 * longer shows it: a hand that types fast presses its next key before the next frame.
 */
export async function keyboardOnce(page, selector, comes, act) {
  await page.evaluate(
    ([named, shown]) => {
      globalThis.keyboardOnce = new Promise((resolve) => {
        new MutationObserver((_, watch) => {
          if ((document.querySelector(named) !== null) !== shown) return;
          watch.disconnect();
          const at = document.activeElement;
          resolve(at === document.body ? "nowhere" : at.id || at.getAttribute("aria-label") || at.textContent);
        }).observe(document.body, { childList: true, subtree: true });
      });
    },
    [selector, comes],
  );
  await act();
  return page.evaluate(() => globalThis.keyboardOnce);
}
