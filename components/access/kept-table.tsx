import styles from '#components/access/kept-table.module.css'
import { usePrivacyWords } from '#components/access/privacy-words.tsx'
import type { PrivacyNow } from '#lib/access/kept-http.ts'
import { barEnd, stays } from '#lib/access/kept-view.ts'

const CREW_OF_FIVE = 5

/** A bar from an order's sending to where it is deleted; what stays runs on. */
function Bar({ row }: { readonly row: PrivacyNow['rows'][number] }) {
  return (
    <span className={styles.track} aria-hidden="true">
      <i
        data-stays={stays(row.until) || undefined}
        style={{ ['--end' as string]: barEnd(row.until) }}
      />
    </span>
  )
}

/** The table that the program follows, with what is there now. */
export function KeptTable({ now }: { readonly now: PrivacyNow }) {
  const words = usePrivacyWords()
  const { columns } = words
  return (
    <table className={styles.table}>
      <caption className="visually-hidden">{words.table}</caption>
      <thead>
        <tr>
          <th scope="col">{columns.what}</th>
          <th scope="col">{columns.now}</th>
          <th scope="col">
            <span className="visually-hidden">{columns.until}</span>
            <span className={styles.marks} aria-hidden="true">
              {words.marks(now.days).map((mark) => (
                <span key={mark}>{mark}</span>
              ))}
            </span>
          </th>
          <th scope="col">{columns.who}</th>
        </tr>
      </thead>
      <tbody>
        {now.rows.map((row) => (
          <tr key={row.id}>
            <th scope="row">
              {words.rows[row.id].name}
              <span>{words.rows[row.id].what}</span>
            </th>
            <td data-number={row.now !== null || undefined}>
              {row.now === null ? words.elsewhere : row.now.count}
            </td>
            <td>
              <Bar row={row} />
              {words.until(row.until, now.days)}
            </td>
            <td>
              {row.sees.length === 0
                ? words.nobody
                : row.sees.length === CREW_OF_FIVE
                  ? words.everyone
                  : row.sees.map(words.who).join(', ')}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
