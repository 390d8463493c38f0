import { useState } from 'react'
import type { FormProps } from '#components/pans/form-props.ts'
import forms from '#components/pans/forms.module.css'
import { useSettled } from '#components/ui/settled.ts'
import { nameIn } from '#lib/menu/name-in.ts'
import type { Measures } from '#lib/stock/nearest-scoop.ts'
import { standInFor } from '#lib/stock/stand-in.ts'
import { formWords as words } from '#lib/words/food-forms-en.ts'
import { panRuleWords } from '#lib/words/pan-rules-en.ts'
import { pansWords } from '#lib/words/pans-en.ts'

/** A missing scoop: what stands in, how far off it is, and how many portions are left with it. */
export function ScoopForm({ state, acting, food, onBack }: FormProps<'scoop'>) {
  const { component } = food
  const [washed, setWashed] = useState(false)
  const name = nameIn(state.station)
  const tool = (id: string) => state.station.tools.find((one) => one.id === id)?.name ?? name(id)
  const said = { weight: (mg: number) => pansWords.amount(mg, 'mg'), name: tool }
  const measures = (list: readonly Measures[]) =>
    list.map(({ id, count }) => `${count} × ${tool(id)}`).join(' + ')
  const standIn = state.standIns[component]
  const settled = useSettled(component)
  const act = async () => {
    if (!settled() || acting.busy) return
    const isDone = standIn
      ? await acting.act(
          { type: 'scoopBack', component, washed },
          pansWords.done.scoopBack(name(component)),
        )
      : await acting.act({ type: 'missScoop', component }, words.scoopUsed(name(component)))
    if (isDone) onBack()
  }
  if (standIn)
    return (
      <div className={forms.one}>
        <p>{words.scoopStandIn(measures(standIn.measures))}</p>
        <label className={forms.check}>
          <input
            type="checkbox"
            checked={washed}
            onChange={(event) => setWashed(event.target.checked)}
          />
          {words.scoopWashed}
        </label>
        <div className={forms.send}>
          <button
            type="button"
            className={forms.main}
            disabled={acting.busy}
            onClick={() => void act()}
          >
            {words.scoopBackSend}
          </button>
        </div>
      </div>
    )
  const nearest = standInFor(state, component)
  if (!nearest) return <p className={forms.warn}>{words.scoopNone}</p>
  const usual = state.portions[component]?.amount ?? 0
  return (
    <div className={forms.one}>
      <h3 className={forms.legend}>{words.scoopNearest}</h3>
      <p className={nearest.best ? forms.large : forms.warn}>
        {panRuleWords.nearest(nearest, said)}
      </p>
      {nearest.best && (
        <p>{words.scoopPortion(said.weight(nearest.best.portionMg), said.weight(usual))}</p>
      )}
      {nearest.notLent.length > 0 && (
        <>
          <h3 className={forms.legend}>{words.scoopNot}</h3>
          <ul className={forms.plain}>
            {nearest.notLent.map((one) => (
              <li key={one.id}>{panRuleWords.notLent(one, said)}</li>
            ))}
          </ul>
        </>
      )}
      <p className={forms.note}>{words.scoopUseWhy}</p>
      <div className={forms.send}>
        <button
          type="button"
          className={forms.main}
          disabled={acting.busy || !nearest.best}
          onClick={() => void act()}
        >
          {words.scoopUse}
        </button>
      </div>
    </div>
  )
}
