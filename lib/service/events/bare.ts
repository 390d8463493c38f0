import type { Recorded, ServiceEvent } from '#lib/service/events/event.ts'

/** An event without where and when it lies. */
export const bare = ({
  position: _position,
  at: _at,
  command: _command,
  due: _due,
  ...event
}: Recorded): ServiceEvent => event as ServiceEvent
