import { useState } from 'react'
import { ChoiceRow } from '#components/job/choice-row.tsx'
import type { FormProps } from '#components/job/form-props.ts'
import forms from '#components/job/forms.module.css'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useSettled } from '#components/ui/settled.ts'
import type { Measures, ScoopChoice } from '#lib/estimate/nearest-scoop.ts'
import { isFarOff, percentOff, scoopChoices } from '#lib/rooms/pans/facts/scoop-choices.ts'
import { nameIn } from '#lib/station/name-in.ts'

const keyOf = ({ measures }: ScoopChoice): string =>
  measures.map(({ id, count }) => `${count} ${id}`).join(' ')

/** A missing scoop: what stands in, how far off it is, and how many portions are left with it. */
export function ScoopForm({ state, acting, food, onBack }: FormProps<'scoop'>) {
  const words = useFoodWords()
  const { component } = food
  const [washed, setWashed] = useState(false)
  const name = nameIn(state.station)
  const tool = (id: string) => state.station.tools.find((one) => one.id === id)?.name ?? name(id)
  const said = { weight: (mg: number) => words.amount(mg, 'mg'), name: tool }
  const measures = (list: readonly Measures[]) =>
    list.map(({ id, count }) => `${count} × ${tool(id)}`).join(' + ')
  const standIn = state.standIns[component]
  const [key, setKey] = useState<string | null>(null)
  /** The choice to which the lead said yes, though it is far off. */
  const [yes, setYes] = useState<string | null>(null)
  const offered = scoopChoices(state, component)
  const choices = offered?.choices ?? []
  const first = choices[0]?.isSpare ? choices[0] : null
  const picked = key === null ? first : (choices.find((one) => keyOf(one) === key) ?? null)
  const isYes = picked !== null && yes === keyOf(picked)
  const lack =
    picked === null
      ? words.forms.scoopLackChoice
      : isFarOff(picked.error) && !isYes
        ? words.forms.scoopLackYes
        : null
  const settled = useSettled(component)
  const act = async () => {
    if (!settled() || acting.busy) return
    const isDone = standIn
      ? await acting.act(
          { type: 'scoopBack', component, washed },
          words.done.scoopBack(name(component)),
        )
      : picked !== null &&
        (await acting.act(
          {
            type: 'missScoop',
            component,
            measures: picked.measures,
            ...(isYes ? { yes: true } : {}),
          },
          words.forms.scoopUsed(name(component)),
        ))
    if (isDone) onBack()
  }
  if (standIn)
    return (
      <div className={forms.one}>
        <p>{words.forms.scoopStandIn(measures(standIn.measures))}</p>
        <label className={forms.check}>
          <input
            type="checkbox"
            checked={washed}
            onChange={(event) => setWashed(event.target.checked)}
          />
          {words.forms.scoopWashed}
        </label>
        <div className={forms.send}>
          <button
            type="button"
            className={forms.main}
            disabled={acting.busy}
            onClick={() => void act()}
          >
            {words.forms.scoopBackSend}
          </button>
        </div>
      </div>
    )
  if (!offered) return <p className={forms.warn}>{words.forms.scoopNone}</p>
  return (
    <div className={forms.one}>
      {offered.choices.length === 0 ? (
        <p className={forms.warn}>{words.panRules.nearest({ best: null, notLent: [] }, said)}</p>
      ) : (
        <ChoiceRow
          legend={words.forms.scoopChoose}
          options={offered.choices.map((one) => ({
            id: keyOf(one),
            ...words.panRules.choice(one, said),
          }))}
          value={picked && keyOf(picked)}
          onChange={(key) => {
            setKey(key)
            setYes(null)
          }}
        />
      )}
      <p>{words.forms.scoopOwn(said.weight(state.portions[component]?.amount ?? 0))}</p>
      {picked && isFarOff(picked.error) && (
        <label className={forms.check}>
          <input
            type="checkbox"
            checked={isYes}
            onChange={(event) => setYes(event.target.checked ? keyOf(picked) : null)}
          />
          {words.forms.scoopFarOff(percentOff(picked.error))}
        </label>
      )}
      {offered.notLent.length > 0 && (
        <>
          <h3 className={forms.legend}>{words.forms.scoopNot}</h3>
          <ul className={forms.plain}>
            {offered.notLent.map((one) => (
              <li key={one.id}>{words.panRules.notLent(one, said)}</li>
            ))}
          </ul>
        </>
      )}
      <p className={forms.note}>{words.forms.scoopUseWhy}</p>
      <div className={forms.send}>
        {choices.length > 0 && lack !== null && <p className={forms.ready}>{lack}</p>}
        <button
          type="button"
          className={forms.main}
          disabled={acting.busy || lack !== null}
          onClick={() => void act()}
        >
          {words.forms.scoopUse}
        </button>
      </div>
    </div>
  )
}
