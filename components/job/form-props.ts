import type { Choose, FoodTask } from '#components/job/chosen.ts'
import type { Acting } from '#components/live/acting.ts'
import type { RunningState } from '#lib/service/state.ts'

export interface FoodDialogProps {
  readonly state: RunningState
  readonly acting: Acting
  readonly food: FoodTask
  readonly now: number
  readonly choose: Choose
  readonly onBack: () => void
}

/** What the form of one job is given. */
export type FormProps<Name extends FoodTask['task']> = Omit<FoodDialogProps, 'food'> & {
  readonly food: Extract<FoodTask, { task: Name }>
}

/** What one step of a batch is given. */
export interface StepProps extends Pick<FormProps<'batch'>, 'state' | 'acting' | 'now'> {
  readonly id: string
  /** What comes after it, once it is written down. */
  readonly onDone: () => void
}
