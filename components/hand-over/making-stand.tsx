import { smallPans } from '#components/hand-over/parcel.tsx'
import styles from '#components/hand-over/shelf.module.css'
import { useHandOverWords } from '#components/hand-over/words.tsx'
import { SmallLine } from '#components/line/small-line.tsx'
import { Wrap, WrapNumber } from '#components/line/wrap.tsx'
import type { Coming } from '#lib/rooms/shelf/views/hand-over.ts'
import type { BeingMade } from '#lib/rooms/shelf/views/stands.ts'
import { sayBuild } from '#lib/service/tickets.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** What comes: the build being made over the small line, and who is next. */
export function MakingStand({
  making,
  coming,
  station,
}: {
  readonly making: readonly BeingMade[]
  readonly coming: readonly Coming[]
  readonly station: StationDocument
}) {
  const words = useHandOverWords()
  const [first, ...others] = making
  const next = coming.filter(({ state }) => state === 'waiting').map(({ name }) => name)
  return (
    <section className={styles.making} aria-label={words.coming}>
      <p className={styles.inWords}>
        {making.length > 0 && (
          <>
            <b>{making.map(({ name }) => sayBuild(name)).join(', ')}</b> {words.beingMade}{' '}
          </>
        )}
        {next.length > 0 && words.nextOnes(next)}
      </p>
      <p className={styles.next}>{next.length > 0 && words.nextOnes(next)}</p>
      {first && (
        <Wrap is="open">
          <WrapNumber said={sayBuild(first.name)} />
          <span className={styles.item}>{words.beingMade}</span>
          {others.length > 0 && (
            <span className={styles.item}>{words.alsoMade(others.map(({ name }) => name))}</span>
          )}
        </Wrap>
      )}
      <SmallLine station={station} pans={smallPans(first?.strip ?? null)} />
    </section>
  )
}
