import type { EndAmount } from '#components/food/use-end-amount.ts'
import { PortionSteps } from '#components/job/steps.tsx'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { Choice } from '#components/ui/choice.tsx'
import { byEye } from '#lib/rooms/day/views/day-amounts.ts'
import { HOW_MUCH } from '#lib/safety/ends.ts'
import type { Placed } from '#lib/service/place.ts'

/** How the amount was learnt, and portions where they were counted or seen: by eye as the range that it is. */
export function EndAmountSteps({
  much,
  place,
  isRead,
}: {
  readonly much: EndAmount
  readonly place: Placed
  /** A reading is typed first: how much it is stays as it is believed. */
  readonly isRead: boolean
}) {
  const words = useFoodWords()
  const { how, portions, each, isPieces, fullPortions } = much
  const amount =
    how === 'eye'
      ? words.ends.byEye(byEye(portions, fullPortions))
      : words.amount(portions * each, isPieces ? 'piece' : 'mg')
  return (
    <>
      {!isRead && (
        <Choice
          legend={words.ends.how}
          isBare
          ways={HOW_MUCH.filter((one) => one !== 'weighed' || !isPieces).map((one) => ({
            id: one,
            label: words.ends.howMuch[one],
          }))}
          chosen={how}
          onChoose={much.setHow}
        />
      )}
      {(how === 'counted' || how === 'eye') && (
        <PortionSteps
          label={words.ends.how}
          value={portions}
          amount={amount}
          least={0}
          most={Math.max(1, Math.ceil((place.amount * 2) / each))}
          onChange={much.setPortions}
        />
      )}
    </>
  )
}
