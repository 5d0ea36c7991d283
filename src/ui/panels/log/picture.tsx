import { type ReactNode, useState } from 'react';

/** A share as a whole number of hundredths: `67 %`. */
export const percent = (share: number): string => `${Math.round(share * 100)} %`;

interface PictureProps {
  /** What it shows and how much stands behind it, for whoever does not see it. */
  readonly label: string;
  readonly width: number;
  readonly height: number;
  readonly children: ReactNode;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** A picture with its table: the table is there for screen readers, and for everybody who opens it. */
export const Picture = ({ label, width, height, children, columns, rows }: PictureProps) => {
  const [seen, setSeen] = useState(false);
  return (
    <figure className="progress-picture">
      <svg role="img" aria-label={label} viewBox={`0 0 ${width} ${height}`}>
        {children}
      </svg>
      <details onToggle={(event) => setSeen(event.currentTarget.open)}>
        <summary>As a table</summary>
        {seen && (
          <table>
            <caption>{label}</caption>
            <thead>
              <tr>
                {columns.map((column) => (
                  <th key={column} scope="col">
                    {column}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <tr key={row.join('|')}>
                  {row.map((cell, i) =>
                    i === 0 ? (
                      <th key={columns[i]} scope="row">
                        {cell}
                      </th>
                    ) : (
                      <td key={columns[i]}>{cell}</td>
                    ),
                  )}
                </tr>
              ))}
            </tbody>
          </table>
        )}
      </details>
    </figure>
  );
};
