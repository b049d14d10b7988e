/** The heads of a table's columns: cells of its head row. */
export const ColumnHeads = ({ heads }: { heads: readonly string[] }) =>
  heads.map((head) => (
    <th key={head} scope="col">
      {head}
    </th>
  ));
