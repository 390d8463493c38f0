import { z } from 'zod'
import { changeSchema, decideChange } from '#lib/service/commands/change.ts'
import {
  closeSchema,
  confirmClockSchema,
  decideClose,
  decideConfirmClock,
} from '#lib/service/commands/close.ts'
import type { Circumstances, Decision } from '#lib/service/commands/decision.ts'
import {
  decideFinish,
  decideHandOver,
  decideRemake,
  decideStart,
  decideTakeBack,
  finishSchema,
  handOverSchema,
  remakeSchema,
  startSchema,
  takeBackSchema,
} from '#lib/service/commands/make.ts'
import { decideOpen, openSchema } from '#lib/service/commands/open.ts'
import {
  changePanSchema,
  correctSchema,
  decideChangePan,
  decideCorrect,
  decideLoad,
  loadSchema,
} from '#lib/service/commands/pans.ts'
import { decidePay, paySchema } from '#lib/service/commands/pay.ts'
import {
  decideSelling,
  resumeSellingSchema,
  stopSellingSchema,
} from '#lib/service/commands/selling.ts'
import { decideSend, sendSchema } from '#lib/service/commands/send.ts'
import {
  acknowledgeSchema,
  cancelSchema,
  decideAcknowledge,
  decideCancel,
} from '#lib/service/commands/stop-build.ts'
import type { ServiceState } from '#lib/service/state.ts'

/** Every command, as it may come from outside. */
export const commandSchema = z.discriminatedUnion('type', [
  openSchema,
  loadSchema,
  changePanSchema,
  correctSchema,
  sendSchema,
  changeSchema,
  cancelSchema,
  acknowledgeSchema,
  startSchema,
  finishSchema,
  takeBackSchema,
  remakeSchema,
  handOverSchema,
  paySchema,
  stopSellingSchema,
  resumeSellingSchema,
  confirmClockSchema,
  closeSchema,
])

export type Command = z.infer<typeof commandSchema>

/** What a command does to a service in this state: events, or a refusal. Changes nothing itself. */
export const decide = (
  state: ServiceState,
  command: Command,
  circumstances: Circumstances,
): Decision => {
  switch (command.type) {
    case 'open':
      return decideOpen(state, command, circumstances)
    case 'load':
      return decideLoad(state, command)
    case 'changePan':
      return decideChangePan(state, command)
    case 'correct':
      return decideCorrect(state, command)
    case 'send':
      return decideSend(state, command)
    case 'change':
      return decideChange(state, command)
    case 'cancel':
      return decideCancel(state, command)
    case 'acknowledge':
      return decideAcknowledge(state, command)
    case 'start':
      return decideStart(state, command)
    case 'finish':
      return decideFinish(state, command)
    case 'takeBack':
      return decideTakeBack(state, command)
    case 'remake':
      return decideRemake(state, command)
    case 'handOver':
      return decideHandOver(state, command)
    case 'pay':
      return decidePay(state, command)
    case 'stopSelling':
    case 'resumeSelling':
      return decideSelling(state, command)
    case 'confirmClock':
      return decideConfirmClock(state)
    case 'close':
      return decideClose(state)
  }
}
