import { useState } from 'react'
import type { Choose, Chosen } from '#components/job/chosen.ts'
import type { Acting } from '#components/live/acting.ts'
import type { Told } from '#components/pans/task-ways.ts'
import { usePansWords } from '#components/pans/words.tsx'
import type { Suggestion } from '#lib/estimate/station-forecast.ts'
import type { Task } from '#lib/rooms/advice/views/do-next.ts'
import type { RunningState } from '#lib/service/state.ts'
import { nameIn } from '#lib/station/name-in.ts'

export interface Tasks {
  readonly busy: boolean
  /** Does it, or opens where it is done. */
  go(task: Task, told: Pick<Told, 'opens'>): Promise<void>
  answer(advice: Suggestion, answer: 'put-off' | 'declined'): Promise<void>
}

/** What the buttons of the things to do, do. */
export const useTasks = (state: RunningState, acting: Acting, choose: Choose): Tasks => {
  const words = usePansWords()
  const [busy, setBusy] = useState(false)
  const name = nameIn(state.station)
  const isOpen = (key: string) =>
    state.adviceLog.some((one) => one.key === key && one.answer === 'open')

  const take = async ({ key, reason }: Suggestion): Promise<void> => {
    const said = (done: string) => async () => {
      if (isOpen(key)) await acting.act({ type: 'answerAdvice', key, answer: 'done' }, done)
    }
    if (reason.why === 'start-batch') {
      const { component, loads } = reason
      const done = words.advice.done.started(name(component), loads)
      if (await acting.act({ type: 'startBatch', component, loads }, done)) await said(done)()
    } else if (reason.why === 'keep') {
      const { component, keep, forItems } = reason
      const done = words.advice.done.saved(name(component), keep)
      const isKept =
        keep === 0 ||
        (await acting.act({ type: 'keep', component, portions: keep, for: [...forItems] }, done))
      if (isKept) await said(keep === 0 ? words.advice.done.seen : done)()
    }
  }

  const act = async (task: Task, opens: Chosen | null): Promise<void> => {
    if (opens) choose(opens)
    else if (task.kind === 'advice')
      if (task.advice.reason.why === 'safety') location.assign(`/hand-over${location.search}`)
      else await take(task.advice)
    else if (task.kind === 'fact')
      if (task.toDo.kind === 'confirm-clock')
        await acting.act({ type: 'confirmClock' }, words.done.clock)
      else
        location.assign((task.toDo.kind === 'find' ? '/hand-over' : '/counter') + location.search)
  }

  const alone = async (work: () => Promise<unknown>): Promise<void> => {
    if (busy || acting.busy) return
    setBusy(true)
    await work().finally(() => setBusy(false))
  }

  return {
    busy,
    go: (task, { opens }) => alone(() => act(task, opens)),
    answer: ({ key }, answer) =>
      alone(() =>
        acting.act(
          { type: 'answerAdvice', key, answer },
          answer === 'put-off' ? words.advice.putOff : words.advice.declined,
        ),
      ),
  }
}
