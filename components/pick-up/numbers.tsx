import styles from '#components/pick-up/pick-up.module.css'
import { usePickUpWords } from '#components/pick-up/words.tsx'
import type { PickUpPlace, Standing } from '#lib/rooms/shelf/views/pick-up-places.ts'
import { sayBuild } from '#lib/service/tickets.ts'

interface NumbersProps {
  readonly place: Exclude<PickUpPlace, 'called'>
  readonly standing: Standing
}

export function Numbers({ place, standing: { builds, more, columns, rows } }: NumbersProps) {
  const words = usePickUpWords()
  const letters = Math.max(3, ...builds.map((build) => sayBuild(build.name).length))
  return (
    <section className={styles.place} data-place={place} aria-label={words.place[place]}>
      <h2>{words.place[place]}</h2>
      <div className={styles.ground}>
        {builds.length === 0 ? (
          <p className={styles.none}>{words.none[place]}</p>
        ) : (
          <ol
            className={styles.numbers}
            style={{
              ['--columns' as string]: columns,
              ['--rows' as string]: rows,
              ['--letters' as string]: letters,
            }}
            aria-live={place === 'made' ? 'polite' : 'off'}
          >
            {builds.map((build) => (
              <li key={build.name} data-build={build.name}>
                {sayBuild(build.name)}
              </li>
            ))}
            {more > 0 && <li className={styles.more}>{words.more(more)}</li>}
          </ol>
        )}
      </div>
    </section>
  )
}

/** Numbers whose guests are asked to the counter, over the line; why is told nobody else. */
export function Called({ standing: { builds, more } }: { readonly standing: Standing }) {
  const words = usePickUpWords()
  if (builds.length === 0) return null
  return (
    <section
      className={styles.called}
      data-place="called"
      aria-label={words.place.called}
      aria-live="polite"
    >
      <h2>{words.place.called}</h2>
      <ol>
        {builds.map((build) => (
          <li key={build.name} data-build={build.name}>
            {sayBuild(build.name)}
          </li>
        ))}
        {more > 0 && <li>{words.more(more)}</li>}
      </ol>
    </section>
  )
}
