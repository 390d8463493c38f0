import { useRef, useState } from 'react'
import styles from '#components/hand-over/kept.module.css'
import { useHandOverWords } from '#components/hand-over/words.tsx'
import type { PastBuild } from '#lib/rooms/shelf/views/hand-over.ts'
import { sayBuild } from '#lib/service/tickets.ts'

/** Letters that a person's initials have at most. */
const MOST_LETTERS = 6

/** Made builds past their time: they stay here until someone initials that they are thrown out. */
export function PastList({
  past,
  timeZone,
  busy,
  onThrownOut,
}: {
  readonly past: readonly PastBuild[]
  readonly timeZone: string
  readonly busy: boolean
  readonly onThrownOut: (past: PastBuild, initials: string) => void
}) {
  const words = useHandOverWords()
  const field = useRef<HTMLInputElement>(null)
  const [initials, setInitials] = useState('')
  if (past.length === 0) return null
  const given = initials.trim()
  return (
    <section className={styles.held} aria-labelledby="past-title">
      <h2 id="past-title">{words.past}</h2>
      <p>{words.pastThen}</p>
      <label className={styles.initials}>
        {words.initials}
        <input
          ref={field}
          maxLength={MOST_LETTERS}
          autoCapitalize="characters"
          autoComplete="off"
          value={initials}
          onChange={(event) =>
            setInitials(event.target.value.toUpperCase().replaceAll(/[^A-Z]/g, ''))
          }
        />
        {given === '' && <small>{words.initialsWhy}</small>}
      </label>
      <ul>
        {past.map((one) => (
          <li key={one.name} data-build={one.name}>
            <h3>{sayBuild(one.name)}</h3>
            <p className={styles.item}>{one.item}</p>
            <p className={styles.why}>
              {(one.because === 'time' ? words.pastSince : words.outSince)(
                words.sayTime(one.since, timeZone),
              )}
            </p>
            <button
              type="button"
              disabled={busy}
              onClick={() => {
                if (given === '') return field.current?.focus()
                // Each throwing out is signed anew: nobody signs as the person before.
                setInitials('')
                onThrownOut(one, given)
              }}
            >
              {words.threwPast(one.name)}
            </button>
          </li>
        ))}
      </ul>
    </section>
  )
}
