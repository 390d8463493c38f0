import { useIsPhone } from '#components/pans/use-walk.ts'
import styles from '#components/print/purchase/places.module.css'
import { usePaperWords } from '#components/print/words.tsx'
import { Choice } from '#components/ui/choice.tsx'
import type { PurchaseFacts } from '#lib/paper/purchase/purchase-facts.ts'
import { LIES, type Lies } from '#lib/station/codes/lies.ts'

/** Where nobody said of a thing where it lies, one tap says it: on the screen, never on paper; folded on a phone. */
export function PlacesPanel({
  facts,
  isFailed,
  onPlace,
}: {
  readonly facts: PurchaseFacts
  readonly isFailed: boolean
  readonly onPlace: (ingredient: string, lies: Lies) => void
}) {
  const { purchase: words } = usePaperWords()
  const isPhone = useIsPhone()
  const unsaid = facts.places.find(({ lies }) => lies === null)?.buy ?? []
  return (
    <section className={styles.panel} aria-label={words.setPlaces}>
      <details key={String(isPhone)} open={!isPhone}>
        <summary>
          {words.setPlaces} <span>{words.toSay(unsaid.length)}</span>
        </summary>
        {isFailed && <p role="alert">{words.notSet}</p>}
        <ul>
          {unsaid.map(({ ingredient, name }) => (
            <li key={ingredient}>
              <Choice
                legend={name}
                ways={LIES.map((id) => ({ id, label: words.places[id] }))}
                chosen={null}
                onChoose={(lies) => onPlace(ingredient, lies)}
              />
            </li>
          ))}
        </ul>
      </details>
    </section>
  )
}
