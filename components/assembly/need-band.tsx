import type { ReactNode } from 'react'
import styles from '#components/assembly/need-band.module.css'
import { useAssemblyWords } from '#components/assembly/words.tsx'
import type { Need, NeedCode } from '#lib/station/codes/codes.ts'

type Told = Pick<Need, 'code' | 'handling'>

const codesOf = (needs: readonly Told[], handling: Need['handling']): readonly NeedCode[] =>
  needs.filter((need) => need.handling === handling).map(({ code }) => code)

/** From so many needs on they are set closer, so that the line keeps its room. */
const MANY = 5

function Sign() {
  return (
    <svg viewBox="0 0 32 30" className={styles.sign} aria-hidden="true">
      <path d="M16 2 31 28H1z" />
      <path d="M16 11v9M16 23v2.5" className={styles.signMark} />
    </svg>
  )
}

/** What a build is kept apart from, in yellow, and what it is made without, each said once. */
export function NeedBand({
  needs,
  isNew = false,
  apart,
  out,
}: {
  readonly needs: readonly Told[]
  /** They came with a change. */
  readonly isNew?: boolean
  /** What stands below the needs kept apart, and below those left out. */
  readonly apart?: ReactNode
  readonly out?: ReactNode
}) {
  const words = useAssemblyWords()
  const keepFrom = codesOf(needs, 'keep-apart')
  const leaveOut = codesOf(needs, 'leave-out')
  const isMany = keepFrom.length >= MANY
  const tag = isNew ? words.isNew : null
  return (
    <>
      {keepFrom.length > 0 && (
        <section className={styles.apart} data-needs="keep-apart">
          <div className={styles.sayApart}>
            <Sign />
            {tag && <b className={styles.tag}>{tag} </b>}
            {isMany && (
              <b>
                {words.keepApartWord.map((word) => (
                  <span key={word}>{word} </span>
                ))}
              </b>
            )}
          </div>
          <strong className={styles.need} data-many={isMany}>
            {isMany ? words.keepApartList(keepFrom) : words.keepApart(keepFrom)}
          </strong>
          {apart}
        </section>
      )}
      {leaveOut.length > 0 && (
        <section className={styles.out} data-needs="leave-out">
          {tag && <b className={styles.tag}>{tag} </b>}
          <strong className={styles.need}>{words.leaveOut(leaveOut)}</strong>
          {out}
        </section>
      )}
    </>
  )
}
