import type { Put, PutTarget } from '#components/food/use-put.ts'
import forms from '#components/job/forms.module.css'
import { PortionSteps } from '#components/job/portion-steps.tsx'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { tareOf } from '#lib/rooms/pans/facts/capacity.ts'
import { amountOf } from '#lib/rooms/pans/facts/pans.ts'
import { SCALE_UNITS, weightMg } from '#lib/rooms/pans/views/weight-entry.ts'
import type { RunningState } from '#lib/service/state.ts'

interface PutAmountProps {
  /** The weight is what the pad types. */
  readonly isTyped: boolean
  readonly onTyped: (is: boolean) => void
  readonly state: RunningState
  readonly put: Put
  readonly target: PutTarget
}

/** How much goes in: portions, or the weight with its pan; a back-up pan goes in whole. */
export function PutAmount({ state, put, target, isTyped, onTyped }: PutAmountProps) {
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
    <div className={forms.amount}>
      {weight ? (
        <label className={forms.weight}>
          {words.forms.byWeight}
          <span>
            <input
              inputMode="decimal"
              maxLength={8}
              data-typed={isTyped}
              onFocus={() => onTyped(true)}
              value={weight.text}
              onChange={(event) =>
                put.setWeight({ ...weight, text: event.target.value.replace(/[^\d.]/g, '') })
              }
            />
            {SCALE_UNITS.map((one) => (
              <button
                key={one}
                type="button"
                aria-pressed={weight.unit === one}
                onClick={() => put.setWeight({ ...weight, unit: one })}
              >
                {words.forms.unit[one]}
              </button>
            ))}
          </span>
        </label>
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
      {net !== null && <p className={forms.note}>{net}</p>}
      {mayWeigh && (
        <button
          type="button"
          className={forms.small}
          onClick={() => {
            onTyped(weight === null)
            put.setWeight(weight ? null : { text: '', unit: 'lb' })
          }}
        >
          {weight ? words.forms.notWeighed : words.forms.byWeight}
        </button>
      )}
    </div>
  )
}
