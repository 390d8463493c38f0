import styles from '#components/start/flow-picture.module.css'
import { useStartWords } from '#components/start/words.tsx'

/** Pans in each well of the picture: a drawing, not this station's line. */
const WELLS = [
  { id: 'first', pans: ['a', 'b'] },
  { id: 'second', pans: ['a', 'b', 'c'] },
  { id: 'third', pans: ['a', 'b', 'c'] },
  { id: 'fourth', pans: ['a', 'b'] },
]

/** The screens where they stand along the line: the lead behind it, guests at its right end. */
export function FlowPicture() {
  const words = useStartWords()
  return (
    <nav className={styles.flow} aria-labelledby="screens-title">
      <h2 id="screens-title">{words.screens}</h2>
      <a className={styles.lead} href="/pans">
        <b>{words.lead.name}</b>
        <span>{words.lead.what}</span>
      </a>
      <div className={styles.line} aria-hidden="true">
        {WELLS.map(({ id, pans }) => (
          <span key={id} className={styles.well} data-pans={pans.length}>
            {pans.map((pan) => (
              <span key={pan} className={styles.pan} />
            ))}
          </span>
        ))}
        <span className={styles.shelf} />
      </div>
      <ol className={styles.along}>
        {words.along.map(({ path, name, what }) => (
          <li key={path}>
            <a href={path}>
              <b>{name}</b>
              <span>{what}</span>
            </a>
          </li>
        ))}
      </ol>
      <a className={styles.sheet} href="/sheet">
        <b>{words.sheet.name}</b>
        <span>{words.sheet.what}</span>
      </a>
    </nav>
  )
}
