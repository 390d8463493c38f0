import styles from '#components/tasting/tasting.module.css'
import { useTastingWords } from '#components/tasting/words.tsx'
import { Note } from '#components/ui/note.tsx'
import { findComponent } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { cardFor } from '#lib/tasting/card-of.ts'
import type { Tasting } from '#lib/tasting/tasting.ts'

/** What was weighed at its end, each against its card to one scale. */
export function Results({
  station,
  tasting,
}: {
  readonly station: StationDocument
  readonly tasting: Tasting
}) {
  const words = useTastingWords()
  const nameOf = (one: string) => findComponent(station, one)?.name ?? one
  const saved = tasting.tasted.filter((one) => one.saved).map(({ component }) => nameOf(component))
  const longest = Math.max(1, ...tasting.tasted.map(({ ratio }) => ratio))
  const length = (share: number) => `${(share / longest) * 100}%`
  return (
    <>
      <Note kind="done" role="status">
        {words.isOver(saved)}
      </Note>
      {tasting.tasted.length > 0 && (
        <ul className={styles.results}>
          {tasting.tasted.map(({ component, typed, ratio, saved: isSaved }) => {
            const card = cardFor(station, component)?.card
            return (
              <li key={component}>
                <p>
                  <b>{nameOf(component)}</b>
                  <span>{words.result(typed, words.percent(ratio))}</span>
                  <span>{isSaved ? words.savedYield : words.unsavedYield}</span>
                </p>
                <div className={styles.lengths} aria-hidden="true">
                  <i data-is="stated" style={{ width: length(1) }} />
                  <i data-is="made" style={{ width: length(ratio) }} />
                </div>
                {isSaved && card && (
                  <a href={`/menu/recipe?station=${station.id}&recipe=${card.id}`}>
                    {words.toRecipe}
                  </a>
                )}
              </li>
            )
          })}
        </ul>
      )}
    </>
  )
}
