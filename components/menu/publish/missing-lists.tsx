import { openIn } from '#components/menu/publish/open.ts'
import styles from '#components/menu/publish/publish.module.css'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'

const PURPOSES = ['firstOrder', 'keepApart', 'printing'] as const

/** What isn't there yet, by what it is missing for, each with what it costs and the way to it. */
export function MissingLists() {
  const words = useMenuWords()
  const { draft, problems, missing: told, goTo } = useMenu()
  const { missing } = openIn(problems, told)
  return (
    <div className={styles.missing}>
      {PURPOSES.map((purpose) => (
        <section key={purpose} aria-label={words.screen.missing[purpose]}>
          <h3>
            {words.screen.missing[purpose]}
            <span>{words.screen.missingShort(missing[purpose].length)}</span>
          </h3>
          {missing[purpose].length === 0 ? null : (
            <ul>
              {missing[purpose].map((one) => (
                <li key={`${one.code} ${one.entity} ${one.id} ${one.field}`}>
                  <button type="button" onClick={() => goTo(one.entity, one.id)}>
                    <b>{words.missing(draft, one)}</b> <span>{words.costs(one.costs)}</span>
                  </button>
                </li>
              ))}
            </ul>
          )}
        </section>
      ))}
    </div>
  )
}
