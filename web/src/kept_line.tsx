/** What became of something that was to be kept. */
export function KeptLine({ told, wrong }: { told: string; wrong: string }) {
  return (
    <>
      <p class="told" role="status">
        {told}
      </p>
      {wrong && (
        <p class="wrong" role="alert">
          {wrong}
        </p>
      )}
    </>
  );
}
