import type { ReactNode } from 'react'
import type { Choose, Chosen } from '#components/job/chosen.ts'
import type { Acting } from '#components/live/acting.ts'
import type { RunningState } from '#lib/service/state.ts'

export type TaskName = Chosen['task']

/** What is done, as what opened it says. */
export type TaskOf<Name extends TaskName> = Extract<Chosen, { task: Name }>

/** What the body of one job is given. */
export interface TaskProps<Name extends TaskName> {
  readonly state: RunningState
  readonly acting: Acting
  readonly task: TaskOf<Name>
  readonly now: number
  readonly choose: Choose
  readonly onBack: () => void
}

/** What one step of a batch is given. */
export interface StepProps extends Pick<TaskProps<'batch'>, 'state' | 'acting' | 'now'> {
  readonly id: string
  /** What else is said of it and can be done with it now, after what the step adds. */
  readonly ways: (own: ReactNode) => ReactNode
  /** What comes after it, once it is written down. */
  readonly onDone: () => void
}
