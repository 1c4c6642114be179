import type { DataTable } from "./replies";

/** So short that a break within ("156" above "mg/dL") would only make it harder to read. */
const unbroken = (cell: string) => (cell.length <= 12 ? "unbroken" : undefined);

/** A table that scrolls by itself where the window is narrower, the row's name staying. `headed`: its name stands above it already. */
export function DataTableBox({ name, table, headed = false }: { name: string; table: DataTable; headed?: boolean }) {
  return (
    <div class={table.columns.length > 4 ? "wide many" : "wide"} role="region" tabIndex={0} aria-label={name}>
      <table>
        <caption class={headed ? "unseen" : undefined}>{name}</caption>
        <thead>
          <tr>
            {table.columns.map((column) => (
              <th scope="col" key={column}>
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {table.rows.map((row, at) => (
            <tr key={at}>
              {row.map((cell, column) =>
                column === 0 ? (
                  <th scope="row" key={column}>
                    {cell}
                  </th>
                ) : (
                  <td key={column} class={unbroken(cell)}>
                    {cell}
                  </td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
