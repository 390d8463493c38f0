import { useState } from 'react'
import { foodName } from '#components/job/food-title.ts'
import type { FormProps } from '#components/job/form-props.ts'
import forms from '#components/job/forms.module.css'
import pad from '#components/job/reading-pad.module.css'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { NumberPad } from '#components/ui/number-pad.tsx'
import { useSettled } from '#components/ui/settled.ts'
import { tareOf } from '#lib/rooms/pans/facts/capacity.ts'
import { SCALE_UNITS, type ScaleUnit, weightMg } from '#lib/rooms/pans/views/weight-entry.ts'
import { componentIn } from '#lib/service/held-stock.ts'

/** What a pan weighs with its food: the empty pan is taken off, and what is left is believed. */
export function WeighForm({ state, acting, food, onBack }: FormProps<'weigh'>) {
  const words = useFoodWords()
  const [text, setText] = useState('')
  const [unit, setUnit] = useState<ScaleUnit>('lb')
  const settled = useSettled(food.pan)
  const component = componentIn(state.station, food.pan) ?? ''
  const tareMg = tareOf(state, food.pan)
  const grossMg = weightMg(text, unit)
  const weight = (mg: number) => words.amount(mg, 'mg')
  const isBelow = tareMg !== null && grossMg !== null && grossMg < tareMg
  const netMg = tareMg === null || grossMg === null || isBelow ? null : grossMg - tareMg
  const each = state.portions[component]?.amount ?? 1
  const act = async () => {
    if (grossMg === null || !settled() || acting.busy) return
    const done = words.forms.weighed(foodName(state, 'pan', food.pan))
    if (await acting.act({ type: 'correct', pan: food.pan, weighedMg: grossMg }, done)) onBack()
  }
  return (
    <div className={forms.two}>
      <div className={forms.what}>
        <p>{words.forms.weighHow}</p>
        {tareMg === null ? (
          <p className={forms.warn}>{words.forms.noTare}</p>
        ) : (
          <p>{words.forms.tare(weight(tareMg))}</p>
        )}
        {isBelow && (
          <p className={forms.warn} role="alert">
            {words.panRules.amount({ code: 'below-tare', tareMg }, 'mg', {
              weight,
              name: (id) => foodName(state, 'pan', id),
            })}
          </p>
        )}
        {netMg !== null && (
          <p className={forms.care}>{words.forms.net(weight(netMg), Math.round(netMg / each))}</p>
        )}
        <div className={forms.send}>
          <button
            type="button"
            className={forms.main}
            disabled={acting.busy || netMg === null}
            onClick={() => void act()}
          >
            {words.forms.weighSend}
          </button>
        </div>
      </div>
      <section className={pad.reading} aria-label={words.forms.byWeight}>
        <output className={pad.display}>
          <b>
            {text === '' ? '–' : text} {words.forms.unit[unit]}
          </b>
        </output>
        <NumberPad
          words={words.readings}
          text={text}
          decimals={3}
          onChange={setText}
          side={SCALE_UNITS.map((one) => (
            <button
              key={one}
              type="button"
              aria-pressed={unit === one}
              onClick={() => setUnit(one)}
            >
              {words.forms.unit[one]}
            </button>
          ))}
        />
      </section>
    </div>
  )
}
