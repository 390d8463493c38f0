/** Holds of builds for pans that are off sale, and their end. */
import type { Build, RunningState } from '#lib/service/state.ts'
import { openBuilds, withBuildAs } from '#lib/service/tickets.ts'

/** Whether it is held for a pan that is off sale, and nothing else is wrong with it. */
export const isHeldForPan = ({ hold, stop }: Build): boolean =>
  hold?.reason === 'off-sale' && stop?.to == null && stop?.reason === 'off-sale'

const isOfPan = (stop: Build['stop']): boolean => stop?.reason === 'off-sale' && stop.to === null

/** A hold for pans that are off sale is over: its food is to be thrown out, or good. */
export const withoutPanHold = (build: Build): Build =>
  build.hold?.reason === 'off-sale'
    ? { ...build, hold: null, stop: isOfPan(build.stop) ? null : build.stop }
    : build

/** Builds go on that were held for a pan which the person in charge found good. */
export const releasedFrom = (
  state: RunningState,
  pan: string,
  madeUntil: number | undefined,
): RunningState =>
  openBuilds(state).reduce<RunningState>((so, { ticket, build }) => {
    const pans = build.hold?.pans?.filter((one) => one !== pan)
    // Also where its guest changed it since: that is answered by itself.
    if (build.hold?.reason !== 'off-sale' || pans?.length === build.hold.pans?.length) return so
    const { until } = build
    const sooner =
      until && madeUntil !== undefined
        ? {
            ...until,
            collectBy: Math.min(until.collectBy, madeUntil),
            throwOutAt: Math.min(until.throwOutAt ?? madeUntil, madeUntil),
          }
        : until
    const bound: Build = { ...build, until: sooner }
    const next =
      pans && pans.length > 0 ? { ...bound, hold: { ...build.hold, pans } } : withoutPanHold(bound)
    return withBuildAs(so, ticket.number, next)
  }, state)
