import styles from '#components/print/labels/labels.module.css'
import { usePaperWords } from '#components/print/words.tsx'
import { Button } from '#components/ui/button.tsx'
import type { LabelTexts } from '#lib/paper/labels/label-texts.ts'

/** A label that can be printed, and how many of it are usual. */
export interface Choosable {
  readonly id: string
  readonly name: string
  readonly texts: LabelTexts
  readonly copies: number
  readonly isUsual: boolean
}

export interface Group {
  readonly id: string
  readonly title: string
  readonly labels: readonly Choosable[]
}

/** By a label's id how many are printed; what isn't named is as usual. */
export type Copies = Readonly<Record<string, number>>

export const MOST_COPIES = 99

export const copiesOf = ({ id, copies, isUsual }: Choosable, chosen: Copies): number =>
  chosen[id] ?? (isUsual ? copies : 0)

interface ChooserProps {
  readonly groups: readonly Group[]
  readonly chosen: Copies
  readonly onChoose: (chosen: Copies) => void
}

/** What has a label and what is bare: the line's pans in their order, what is behind them, and the rest. */
export function LabelChooser({ groups, chosen, onChoose }: ChooserProps) {
  const { labels: words } = usePaperWords()
  const put = (id: string, copies: number) => onChoose({ ...chosen, [id]: copies })
  const all = groups.flatMap(({ labels }) => labels)
  const none = () => onChoose(Object.fromEntries(all.map(({ id }) => [id, 0])))
  const every = () => onChoose(Object.fromEntries(all.map(({ id, copies }) => [id, copies])))
  return (
    <div className={styles.kinds}>
      <div className={styles.head}>
        <h2>{words.what}</h2>
        <span>
          <Button onClick={every}>{words.all}</Button> <Button onClick={none}>{words.none}</Button>
        </span>
      </div>
      {groups.map(({ id, title, labels }) => (
        <section key={id} className={styles.kind} aria-label={title}>
          <h3>{title}</h3>
          <div className={styles.row}>
            {labels.map((one) => {
              const copies = copiesOf(one, chosen)
              return (
                <div key={one.id} className={styles.vessel} data-on={copies > 0 || undefined}>
                  <button
                    type="button"
                    aria-pressed={copies > 0}
                    onClick={() => put(one.id, copies > 0 ? 0 : one.copies)}
                  >
                    {one.name}
                  </button>
                  {copies > 0 && (
                    <div className={styles.count}>
                      <button
                        type="button"
                        aria-label={words.fewerOf(one.name)}
                        onClick={() => put(one.id, copies - 1)}
                      >
                        −
                      </button>
                      <span>{words.copies(copies)}</span>
                      <button
                        type="button"
                        aria-label={words.moreOf(one.name)}
                        disabled={copies >= MOST_COPIES}
                        onClick={() => put(one.id, copies + 1)}
                      >
                        +
                      </button>
                    </div>
                  )}
                </div>
              )
            })}
          </div>
        </section>
      ))}
    </div>
  )
}
