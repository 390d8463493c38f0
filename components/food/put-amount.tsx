import type { Put, PutTarget } from '#components/food/use-put.ts'
import { PortionSteps } from '#components/job/steps.tsx'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { Button } from '#components/ui/button.tsx'
import { Choice } from '#components/ui/choice.tsx'
import { Field } from '#components/ui/field.tsx'
import { tareOf } from '#lib/rooms/pans/facts/capacity.ts'
import { amountOf } from '#lib/rooms/pans/facts/pans.ts'
import { SCALE_UNITS, weightMg } from '#lib/rooms/pans/views/weight-entry.ts'
import type { RunningState } from '#lib/service/state.ts'

interface PutAmountProps {
  /** Whether the weight is what the pad types. */
  readonly onTyped: (is: boolean) => void
  readonly state: RunningState
  readonly put: Put
  readonly target: PutTarget
  /** Only how much: there is no room for another way to say it. */
  readonly isShort: boolean
}

/** How much goes in: portions, or the weight with its pan; a back-up pan goes in whole. */
export function PutAmount({ state, put, target, onTyped, isShort }: PutAmountProps) {
  const words = useFoodWords()
  const unit = state.portions[target.component]?.unit ?? 'mg'
  if (put.isAll) return null
  const mayWeigh = unit === 'mg' && tareOf(state, target.id) !== null && target.holds === 0
  const { weight } = put
  const tareMg = tareOf(state, target.id) ?? 0
  const grossMg = weight ? weightMg(weight.text, weight.unit) : null
  const each = state.portions[target.component]?.amount ?? 1
  const netMg = (grossMg ?? 0) - tareMg
  const net =
    grossMg === null
      ? null
      : netMg < 0
        ? words.forms.tare(words.amount(tareMg, 'mg'))
        : words.forms.net(words.amount(netMg, 'mg'), Math.round(netMg / each))
  return (
    <>
      {weight ? (
        <Choice
          legend={words.forms.byWeight}
          ways={SCALE_UNITS.map((id) => ({ id, label: words.forms.unit[id] }))}
          chosen={weight.unit}
          onChoose={(chosen) => put.setWeight({ ...weight, unit: chosen })}
        />
      ) : (
        <PortionSteps
          label={words.forms.goesIn}
          value={put.portions}
          amount={words.amount(amountOf(state, target.component, put.portions), unit)}
          least={1}
          most={put.most}
          onChange={put.setPortions}
        />
      )}
      {weight && !put.needsReading && (
        <Field
          label={words.forms.byWeight}
          inputMode="decimal"
          maxLength={8}
          value={weight.text}
          onChange={(event) =>
            put.setWeight({ ...weight, text: event.target.value.replace(/[^\d.]/g, '') })
          }
        />
      )}
      {net !== null && <p>{net}</p>}
      {mayWeigh && !isShort && (
        <Button
          kind="quiet"
          onClick={() => {
            onTyped(weight === null)
            put.setWeight(weight ? null : { text: '', unit: 'lb' })
          }}
        >
          {weight ? words.forms.notWeighed : words.forms.byWeight}
        </Button>
      )}
    </>
  )
}
