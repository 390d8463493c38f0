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
  acceptCautionSchema,
  decideAcceptCaution,
  decideSignOff,
  decideSignOn,
  signOffSchema,
  signOnSchema,
} from '#lib/service/commands/in-charge.ts'
import {
  changeLabelSchema,
  decideChangeLabel,
  decideNotSameProduct,
  notSameProductSchema,
} from '#lib/service/commands/label.ts'
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
  decideSetBackup,
  decideSoilPan,
  loadSchema,
  setBackupSchema,
  soilPanSchema,
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
import { decideTellNeed, tellNeedSchema } from '#lib/service/commands/tell-need.ts'
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
  signOnSchema,
  signOffSchema,
  acceptCautionSchema,
  tellNeedSchema,
  changeLabelSchema,
  notSameProductSchema,
  soilPanSchema,
  setBackupSchema,
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
      return decideChangePan(state, command, circumstances)
    case 'correct':
      return decideCorrect(state, command)
    case 'send':
      return decideSend(state, command, circumstances)
    case 'change':
      return decideChange(state, command, circumstances)
    case 'cancel':
      return decideCancel(state, command)
    case 'acknowledge':
      return decideAcknowledge(state, command)
    case 'start':
      return decideStart(state, command)
    case 'finish':
      return decideFinish(state, command)
    case 'takeBack':
      return decideTakeBack(state, command, circumstances)
    case 'remake':
      return decideRemake(state, command, circumstances)
    case 'handOver':
      return decideHandOver(state, command)
    case 'pay':
      return decidePay(state, command)
    case 'stopSelling':
    case 'resumeSelling':
      return decideSelling(state, command)
    case 'signOn':
      return decideSignOn(state, circumstances)
    case 'signOff':
      return decideSignOff(state)
    case 'acceptCaution':
      return decideAcceptCaution(state, command, circumstances)
    case 'tellNeed':
      return decideTellNeed(state, command)
    case 'changeLabel':
      return decideChangeLabel(state, command, circumstances)
    case 'notSameProduct':
      return decideNotSameProduct(state, command, circumstances)
    case 'soilPan':
      return decideSoilPan(state, command, circumstances)
    case 'setBackup':
      return decideSetBackup(state, command, circumstances)
    case 'confirmClock':
      return decideConfirmClock(state)
    case 'close':
      return decideClose(state)
  }
}
