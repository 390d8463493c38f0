import styles from '#components/receiving/line.module.css'
import { useReceivingWords } from '#components/receiving/words.tsx'
import { cameToday, type FoodToReceive, type ReceivingShown } from '#lib/larder/receiving-view.ts'

interface CrateProps {
  readonly food: FoodToReceive
  readonly shown: ReceivingShown
  readonly isChosen: boolean
  readonly onChoose: () => void
}

/** A crate of one food: its name, and what came of it today. */
function Crate({ food, shown, isChosen, onChoose }: CrateProps) {
  const words = useReceivingWords()
  const today = cameToday(food, shown)
  const label = words.label[food.label]
  return (
    <button
      type="button"
      className={styles.crate}
      data-came={today === null ? undefined : today.sentBack === null ? 'in' : 'back'}
      aria-pressed={isChosen}
      onClick={onChoose}
    >
      <b>{food.name}</b>
      {today && (
        <span>
          {today.sentBack === null
            ? words.today(words.sayTime(today.at, shown.timeZone))
            : words.wentBack}
        </span>
      )}
      {label !== null && <i>{label}</i>}
    </button>
  )
}

/** What the shelf beside the line is called as a place. */
const OTHERS = '@others'

/** The pan, or the shelf, that a food goes into. */
export const placeToReceive = (shown: ReceivingShown, ingredient: string): string =>
  shown.wells
    .flatMap(({ pans }) => pans)
    .find(({ foods }) => foods.some((one) => one.ingredient === ingredient))?.component ?? OTHERS

interface LineProps {
  readonly shown: ReceivingShown
  readonly chosen: string | null
  readonly onChoose: (ingredient: string) => void
}

/** The line as it is in the room, each pan with the crates of what goes into it; the rest on a shelf. */
export function LineToReceive({ shown, chosen, onChoose }: LineProps) {
  const words = useReceivingWords()
  const crates = (foods: readonly FoodToReceive[]) =>
    foods.map((food) => (
      <Crate
        key={food.ingredient}
        food={food}
        shown={shown}
        isChosen={food.ingredient === chosen}
        onChoose={() => onChoose(food.ingredient)}
      />
    ))
  const isChosen = ({ ingredient }: FoodToReceive) => ingredient === chosen
  return (
    <div className={styles.room} data-busy={chosen === null ? undefined : ''}>
      <section className={styles.line} aria-label={words.line}>
        {shown.wells.map((well) => (
          <div
            key={well.id}
            className={styles.well}
            data-chosen={well.pans.some(({ foods }) => foods.some(isChosen)) || undefined}
            style={{ flexGrow: well.pans.length }}
          >
            {well.pans.map((pan) => (
              <div
                key={pan.component}
                className={styles.pan}
                data-notch={pan.component}
                data-chosen={pan.foods.some(isChosen) || undefined}
              >
                <span className={styles.name}>
                  {pan.short.map((part) => (
                    <span key={part}>{part}</span>
                  ))}
                </span>
                <div className={styles.crates}>{crates(pan.foods)}</div>
              </div>
            ))}
          </div>
        ))}
      </section>
      {shown.others.length > 0 && (
        <section
          className={styles.others}
          aria-label={words.others}
          data-notch={OTHERS}
          data-chosen={shown.others.some(isChosen) || undefined}
        >
          <h2>{words.others}</h2>
          <div>{crates(shown.others)}</div>
        </section>
      )}
    </div>
  )
}
