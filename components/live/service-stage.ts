import { useCrew } from '#components/live/crew.tsx'
import { type ServiceStage, serviceStage } from '#lib/rooms/day/views/service-stage.ts'

/** Whether the service of this screen is open, closed, none, or not known yet. */
export const useServiceStage = (): ServiceStage =>
  useCrew(({ welcome, service, state }) =>
    serviceStage({ welcomed: welcome !== null, service, state }),
  )
