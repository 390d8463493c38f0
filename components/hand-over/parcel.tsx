import styles from '#components/hand-over/shelf.module.css'
import { type HandOverWords, useHandOverWords } from '#components/hand-over/words.tsx'
import { type InSmall, SmallLine } from '#components/line/small-line.tsx'
import { Wrap, WrapNumber } from '#components/line/wrap.tsx'
import type { OnShelf } from '#lib/rooms/shelf/views/hand-over.ts'
import { type Strip, withinLines } from '#lib/rooms/shelf/views/strip.ts'
import { sayBuild } from '#lib/service/tickets.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** Letters on a line of a wrap, and lines below its small line, by how many boards there are. */
const LETTERS = 11
const LETTERS_ON_A_PHONE = 9
const LINES: readonly number[] = [5, 2, 1]
const FEWEST_LINES = 0
/** So many boards leave room for the item's name. */
const WITH_ITEM = 1

const linesAt = (boards: number): number => LINES[boards - 1] ?? FEWEST_LINES

export const smallPans = (strip: Strip | null): ReadonlyMap<string, InSmall> =>
  new Map((strip?.pans ?? []).map(({ pan, is }) => [pan, is]))

function Differs({
  words,
  strip,
  boards,
  isPhone,
}: {
  readonly words: HandOverWords
  readonly strip: Strip
  readonly boards: number
  readonly isPhone: boolean
}) {
  const tight = boards === 1 ? 'no' : boards === 2 ? 'some' : 'most'
  const texts = strip.named.map((one) => words.sayDiffers(one, tight))
  const { shown, more } = withinLines(texts, {
    letters: isPhone ? LETTERS_ON_A_PHONE : LETTERS,
    lines: linesAt(boards),
  })
  if (linesAt(boards) === 0) return null
  return (
    <>
      {shown.map((text, at) => (
        <span
          key={text}
          className={styles.differs}
          data-legible="shelf"
          data-is={strip.named[at]?.is}
        >
          {text}
        </span>
      ))}
      {more > 0 && (
        <span className={styles.differs} data-legible="shelf">
          {words.moreDiffers(more, shown.length > 0)}
        </span>
      )}
    </>
  )
}

/** A build where it was set down; a tap picks it. While another is asked about it is only a number. */
export function Parcel({
  build,
  station,
  boards,
  isPhone,
  isChosen,
  isBare,
  late,
  onPick,
}: {
  readonly build: OnShelf
  readonly station: StationDocument
  /** How many boards the shelf has: the more there are, the lower each wrap is. */
  readonly boards: number
  readonly isPhone: boolean
  readonly isChosen: boolean
  /** Nothing but numbers is to be read, and nothing to be picked. */
  readonly isBare: boolean
  /** Said of what stands there too long, in place of what else there is no room for. */
  readonly late: string | null
  readonly onPick: () => void
}) {
  const words = useHandOverWords()
  const { strip, askFirst } = build
  const isShown = late === null || boards === 1
  return (
    <button
      type="button"
      className={styles.parcel}
      aria-pressed={isChosen}
      disabled={isBare && !isChosen}
      onClick={onPick}
    >
      <Wrap is="closed" isChosen={isChosen}>
        <WrapNumber said={sayBuild(build.name)} />
        {!isBare && !askFirst && boards <= WITH_ITEM && (
          <span className={styles.item}>{build.item}</span>
        )}
        {!isBare && strip && (
          <>
            <SmallLine station={station} pans={smallPans(strip)} />
            {isShown &&
              (strip.named.length === 0 ? (
                linesAt(boards) > 0 && (
                  <span className={styles.usual} data-legible="shelf">
                    {words.asItComes}
                  </span>
                )
              ) : (
                <Differs words={words} strip={strip} boards={boards} isPhone={isPhone} />
              ))}
            {late !== null && (
              <span className={styles.late} data-legible="shelf">
                {late}
              </span>
            )}
          </>
        )}
        {askFirst && (
          <span className={styles.apartWord} data-legible="shelf">
            {words.keptApart}
          </span>
        )}
      </Wrap>
    </button>
  )
}
