/** Said to a screen reader too, once it lasts. */
export function Loading({ text }: { text: string }) {
  return (
    <p class="loading" role="status">
      {text}
    </p>
  );
}
