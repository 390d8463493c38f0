import { type CSSProperties, useEffect, useLayoutEffect } from 'react'
import type { DrawnPan, DrawnWell } from '#components/menu/line/drawn.ts'
import styles from '#components/menu/line/line-above.module.css'
import { PanAbove } from '#components/menu/line/pan-above.tsx'
import { placed } from '#components/menu/line/placed.ts'
import type { Stop } from '#components/menu/line/stops.ts'
import { useHand } from '#components/menu/line/use-hand.ts'
import { WellFoot } from '#components/menu/line/well-foot.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { type Stand, wellFromAbove } from '#lib/measure/well-layout.ts'

interface LineAboveProps {
  readonly wells: readonly DrawnWell[]
  /** The pan or well that the panel below is about. */
  readonly chosen: string | null
  /** A pan that is asked to be taken in hand, by its panel. */
  readonly asked: string | null
  readonly onTaken: () => void
  readonly onPan: (pan: string) => void
  readonly onWell: (well: string) => void
  readonly onBare: (well: string) => void
  readonly onAddWell: () => void
  readonly onSetDown: (pan: string, stop: Stop) => void
}

/** The line from above, to scale: wells, the pans put into them, and one that may be in the hand. */
export function LineAbove({
  wells,
  chosen,
  asked,
  onTaken,
  onPan,
  onWell,
  onBare,
  onAddWell,
  onSetDown,
}: LineAboveProps) {
  const { line: words } = useMenuWords()
  const moving = useHand<DrawnPan>(wells, onSetDown)
  const { root, hand, held, shown, stops } = moving
  const inHand = hand?.pan ?? null
  const isByKeys = hand !== null && hand.carried === null
  const stop = hand?.stop
  // biome-ignore lint/correctness/useExhaustiveDependencies: it is drawn in another well at each stop
  useLayoutEffect(() => {
    if (isByKeys)
      root.current?.querySelector<HTMLElement>(`[data-pan="${CSS.escape(inHand ?? '')}"]`)?.focus()
  }, [isByKeys, inHand, stop])
  // biome-ignore lint/correctness/useExhaustiveDependencies: it is taken once, when it is asked
  useEffect(() => {
    if (asked === null) return
    moving.take(asked)
    onTaken()
  }, [asked])
  const onKeys = (pan: string, event: React.KeyboardEvent) => {
    if (event.key === 'ArrowLeft' || event.key === 'ArrowRight') {
      event.preventDefault()
      moving.step(pan, event.key === 'ArrowLeft' ? -1 : 1)
    } else if (inHand === pan && event.key === 'Enter') {
      event.preventDefault()
      moving.putDown()
    } else if (inHand === pan && event.key === 'Escape') {
      event.stopPropagation()
      moving.putBack()
    }
  }
  const tap = (pan: string) => {
    if (moving.isDragsEnd()) return
    if (inHand === pan) moving.putDown()
    else if (inHand === null) onPan(pan)
  }
  const drawn = (pan: DrawnPan, well: number, stand: Stand) => (
    <PanAbove
      key={pan.pan}
      pan={pan}
      well={well + 1}
      style={placed(stand)}
      isChosen={chosen === pan.pan}
      isInHand={inHand === pan.pan}
      isCarried={hand?.carried !== null && inHand === pan.pan}
      onPress={(event) => moving.press(pan.pan, event)}
      onKeyDown={(event) => onKeys(pan.pan, event)}
      onTap={() => tap(pan.pan)}
    />
  )
  return (
    <div className={styles.stage} style={{ '--wells': Math.max(3, wells.length) } as CSSProperties}>
      <p className={styles.say}>
        <span role="status">
          {held && (
            <>
              <b>{words.inHand(held.name)}</b>{' '}
              {isByKeys && (
                <>
                  <span>{words.keys}</span>{' '}
                  <button type="button" onClick={moving.putDown} disabled={!hand.stop.fits}>
                    {words.setDown}
                  </button>{' '}
                  <button type="button" onClick={moving.putBack}>
                    {words.putBack}
                  </button>
                </>
              )}
            </>
          )}
        </span>
      </p>
      <div ref={root} className={styles.line} data-line="">
        <ol aria-label={words.line}>
          {shown.map(({ well, pans }, number) => {
            const above = wellFromAbove(pans)
            const isAimed = hand?.stop.well === well
            const isRefused = isAimed && !hand.stop.fits
            const own = wells.find((one) => one.well === well)
            if (!own) return null
            return (
              <li key={well} className={styles.well} data-held={own.held} data-notch={well}>
                <div
                  className={styles.opening}
                  data-opening={well}
                  data-refused={isRefused || undefined}
                >
                  {above.gaps.map((gap) => (
                    <button
                      key={`${gap.left} ${gap.top}`}
                      type="button"
                      className={styles.gap}
                      style={placed(gap)}
                      disabled={hand !== null}
                      aria-label={words.putIn(number + 1)}
                      onClick={() => onBare(well)}
                    >
                      +
                    </button>
                  ))}
                  {above.stands.map((stand) => {
                    const pan = pans.find((one) => one.pan === stand.pan)
                    return pan ? drawn(pan, number, stand) : null
                  })}
                  {isRefused &&
                    held &&
                    drawn(held, number, { left: 7, top: 0, along: 6.875, across: 12.75 })}
                </div>
                <WellFoot
                  number={number + 1}
                  held={own.held}
                  sizes={pans.map(({ size }) => size)}
                  isChosen={chosen === well}
                  refused={isRefused && held ? held.size : null}
                  isAimed={isAimed && !isRefused}
                  onTap={() => onWell(well)}
                />
                {hand !== null && hand.carried === null && (
                  <fieldset className={styles.stops}>
                    {stops
                      .filter((one) => one.well === well && one.fits)
                      .map((one) => (
                        <button
                          key={one.at}
                          type="button"
                          aria-label={words.setHere(number + 1, one.at)}
                          aria-pressed={stop?.well === one.well && stop.at === one.at}
                          onClick={() => moving.aim(one)}
                        />
                      ))}
                  </fieldset>
                )}
              </li>
            )
          })}
          <li className={styles.add}>
            <button type="button" onClick={onAddWell} aria-label={words.addWell}>
              +
            </button>
          </li>
        </ol>
      </div>
      {hand?.carried && held && (
        <div
          className={styles.carried}
          aria-hidden="true"
          style={{
            left: hand.carried.x,
            top: hand.carried.y,
            width: hand.carried.width,
            height: hand.carried.height,
          }}
        >
          {held.lines.map((one) => (
            <b key={one}>{one}</b>
          ))}
        </div>
      )}
    </div>
  )
}
