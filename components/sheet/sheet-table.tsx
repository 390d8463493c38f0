import styles from '#components/sheet/sheet-table.module.css'
import { WordSign } from '#components/sheet/word-sign.tsx'
import { useSheetWords } from '#components/sheet/words.tsx'
import type { Sheet, SheetCell, SheetRow } from '#lib/rooms/care/views/allergen-sheet.ts'

function Cell({ cell }: { readonly cell: SheetCell }) {
  const words = useSheetWords()
  const kinds = words.kinds(cell.kinds)
  return (
    <td data-word={cell.word}>
      <span className={styles.drawn} aria-hidden="true">
        <WordSign word={cell.word} />
        {cell.canChange && <sup>{words.canChange}</sup>}
        {kinds !== '' && <small>{kinds}</small>}
      </span>
      <span className="visually-hidden">
        {words.cell(words.word[cell.word], kinds, cell.canChange)}
      </span>
    </td>
  )
}

function Row({ row }: { readonly row: SheetRow }) {
  const words = useSheetWords()
  return (
    <tr>
      <th scope="row">
        {row.name}
        {row.soiledBy.length > 0 && <small>{words.soiled(row.soiledBy)}</small>}
        {row.stated.map(({ name, readOn }) => (
          <small key={name}>{words.stated(name, readOn)}</small>
        ))}
      </th>
      {row.cells.map((cell, place) => (
        <Cell key={`${row.id} ${String(place)}`} cell={cell} />
      ))}
      <td className={styles.date} data-read={row.readOn !== null}>
        {row.readOn === null ? words.readLabel : words.date(row.readOn)}
      </td>
    </tr>
  )
}

/** Food down, allergens across; what is served first, then what it is made of. */
export function SheetTable({ sheet }: { readonly sheet: Sheet }) {
  const words = useSheetWords()
  const groups = [
    { title: words.items, rows: sheet.items, kind: 'items' },
    { title: words.components, rows: sheet.components, kind: 'components' },
  ]
  return (
    <div className={styles.scroller}>
      <table className={styles.table}>
        <caption className="visually-hidden">{words.of(sheet.station)}</caption>
        <thead>
          <tr>
            <th scope="col">{words.food}</th>
            {sheet.codes.map((code) => (
              <th key={code} scope="col">
                {words.column(code)}
              </th>
            ))}
            <th scope="col" className={styles.date}>
              {words.labelRead}
            </th>
          </tr>
        </thead>
        {groups.map(({ title, rows, kind }) => (
          <tbody key={kind} data-kind={kind}>
            <tr className={styles.group}>
              <th scope="rowgroup" colSpan={sheet.codes.length + 2}>
                {title}
              </th>
            </tr>
            {rows.map((row) => (
              <Row key={row.id} row={row} />
            ))}
          </tbody>
        ))}
      </table>
    </div>
  )
}
