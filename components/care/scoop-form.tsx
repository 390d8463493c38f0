import { useState } from 'react'
import { ChoiceRow } from '#components/job/choice-row.tsx'
import styles from '#components/job/job.module.css'
import { JobForm } from '#components/job/job-form.tsx'
import type { TaskProps } from '#components/job/task-props.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useJob } from '#components/job/use-job.ts'
import { Note } from '#components/ui/note.tsx'
import type { Measures, ScoopChoice } from '#lib/estimate/nearest-scoop.ts'
import { isFarOff, percentOff, scoopChoices } from '#lib/rooms/pans/facts/scoop-choices.ts'
import { nameIn } from '#lib/station/name-in.ts'

type Props = TaskProps<'scoop'>

const keyOf = ({ measures }: ScoopChoice): string =>
  measures.map(({ id, count }) => `${count} ${id}`).join(' ')

/** Its own scoop is found again. */
function ScoopBack({ state, acting, task, onBack }: Props) {
  const words = useFoodWords()
  const { component } = task
  const [washed, setWashed] = useState(false)
  const name = nameIn(state.station)
  const tool = (id: string) => state.station.tools.find((one) => one.id === id)?.name ?? name(id)
  const measures = (list: readonly Measures[]) =>
    list.map(({ id, count }) => `${count} × ${tool(id)}`).join(' + ')
  const job = useJob({
    acting,
    about: component,
    command: () => ({ type: 'scoopBack', component, washed }),
    done: words.done.scoopBack(name(component)),
    after: onBack,
  })
  return (
    <JobForm job={job} send={words.forms.scoopBackSend}>
      <p>{words.forms.scoopStandIn(measures(state.standIns[component]?.measures ?? []))}</p>
      <label className={styles.check}>
        <input
          type="checkbox"
          checked={washed}
          onChange={(event) => setWashed(event.target.checked)}
        />
        {words.forms.scoopWashed}
      </label>
    </JobForm>
  )
}

/** A missing scoop: what stands in, how far off it is, and how many portions are left with it. */
function ScoopMissing({ state, acting, task, onBack }: Props) {
  const words = useFoodWords()
  const { component } = task
  const name = nameIn(state.station)
  const tool = (id: string) => state.station.tools.find((one) => one.id === id)?.name ?? name(id)
  const said = { weight: (mg: number) => words.amount(mg, 'mg'), name: tool }
  const [key, setKey] = useState<string | null>(null)
  /** The choice to which the lead said yes, though it is far off. */
  const [yes, setYes] = useState<string | null>(null)
  const offered = scoopChoices(state, component)
  const choices = offered?.choices ?? []
  const first = choices[0]?.isSpare ? choices[0] : null
  const picked = key === null ? first : (choices.find((one) => keyOf(one) === key) ?? null)
  const isYes = picked !== null && yes === keyOf(picked)
  const job = useJob({
    acting,
    about: component,
    lacks: [
      picked === null
        ? words.forms.scoopLackChoice
        : isFarOff(picked.error) && !isYes
          ? words.forms.scoopLackYes
          : null,
    ],
    command: () =>
      picked && {
        type: 'missScoop',
        component,
        measures: picked.measures,
        ...(isYes ? { yes: true } : {}),
      },
    done: words.forms.scoopUsed(name(component)),
    after: onBack,
  })
  if (!offered) return <Note kind="no">{words.forms.scoopNone}</Note>
  return (
    <JobForm
      job={job}
      send={words.forms.scoopUse}
      note={words.forms.scoopUseWhy}
      side={
        offered.notLent.length > 0 && (
          <div>
            <h3 className={styles.legend}>{words.forms.scoopNot}</h3>
            <ul className={styles.plain}>
              {offered.notLent.map((one) => (
                <li key={one.id}>{words.panRules.notLent(one, said)}</li>
              ))}
            </ul>
          </div>
        )
      }
    >
      {choices.length === 0 ? (
        <Note kind="no">{words.panRules.nearest({ best: null, notLent: [] }, said)}</Note>
      ) : (
        <ChoiceRow
          legend={words.forms.scoopChoose}
          options={choices.map((one) => ({
            id: keyOf(one),
            ...words.panRules.choice(one, said),
          }))}
          value={picked && keyOf(picked)}
          onChange={(next) => {
            setKey(next)
            setYes(null)
          }}
        />
      )}
      <p>{words.forms.scoopOwn(said.weight(state.portions[component]?.amount ?? 0))}</p>
      {picked && isFarOff(picked.error) && (
        <label className={styles.check}>
          <input
            type="checkbox"
            checked={isYes}
            onChange={(event) => setYes(event.target.checked ? keyOf(picked) : null)}
          />
          {words.forms.scoopFarOff(percentOff(picked.error))}
        </label>
      )}
    </JobForm>
  )
}

/** The scoop of a component is missing, or back. */
export function ScoopForm(props: Props) {
  return props.state.standIns[props.task.component] ? (
    <ScoopBack {...props} />
  ) : (
    <ScoopMissing {...props} />
  )
}
