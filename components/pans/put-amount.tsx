import forms from '#components/pans/forms.module.css'
import { PortionSteps } from '#components/pans/portion-steps.tsx'
import type { Put, PutTarget } from '#components/pans/use-put.ts'
import type { RunningState } from '#lib/service/state.ts'
import { tareOf } from '#lib/stock/capacity.ts'
import { amountOf } from '#lib/views/pans.ts'
import { SCALE_UNITS } from '#lib/views/weight-entry.ts'
import { formWords as words } from '#lib/words/food-forms-en.ts'
import { pansWords } from '#lib/words/pans-en.ts'

interface PutAmountProps {
  readonly state: RunningState
  readonly put: Put
  readonly target: PutTarget
}

/** How much goes in: portions, or the weight with its pan; a back-up pan goes in whole. */
export function PutAmount({ state, put, target }: PutAmountProps) {
  const unit = state.portions[target.component]?.unit ?? 'mg'
  if (put.isAll) return null
  const mayWeigh = unit === 'mg' && tareOf(state, target.id) !== null && target.holds === 0
  const { weight } = put
  return (
    <div className={forms.amount}>
      {weight ? (
        <label className={forms.weight}>
          {words.byWeight}
          <span>
            <input
              inputMode="decimal"
              maxLength={8}
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
                {words.unit[one]}
              </button>
            ))}
          </span>
        </label>
      ) : (
        <PortionSteps
          label={words.goesIn}
          value={put.portions}
          amount={pansWords.amount(amountOf(state, target.component, put.portions), unit)}
          least={1}
          most={put.most}
          onChange={put.setPortions}
        />
      )}
      {mayWeigh && (
        <button
          type="button"
          className={forms.small}
          onClick={() => put.setWeight(weight ? null : { text: '', unit: 'lb' })}
        >
          {weight ? words.notWeighed : words.byWeight}
        </button>
      )}
    </div>
  )
}
