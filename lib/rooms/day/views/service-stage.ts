import { isRunning, type ServiceState } from '#lib/service/state.ts'

/** What a crew screen can be about: the service, or why there is none to show. */
export type ServiceStage = 'connecting' | 'no-service' | 'closed' | 'open'

export const serviceStage = (view: {
  readonly welcomed: boolean
  readonly service: string | null
  readonly state: ServiceState
}): ServiceStage => {
  if (!view.welcomed) return 'connecting'
  if (view.service === null) return 'no-service'
  if (!isRunning(view.state)) return 'connecting'
  return view.state.stage === 'open' ? 'open' : 'closed'
}
