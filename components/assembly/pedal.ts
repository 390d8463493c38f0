import { useEffect, useRef } from 'react'
import { useGuard } from '#components/ui/settled.ts'

const isPedal = (event: KeyboardEvent): boolean =>
  (event.key === 'Enter' || event.key === ' ') && !event.ctrlKey && !event.altKey && !event.metaKey

/** Whether the keyboard stands on a control of its own, which then gets the key. */
const isElsewhere = (target: EventTarget | null): boolean =>
  target instanceof Element &&
  target.closest('button, a, input, select, textarea, summary') !== null &&
  target.closest('[data-main-action]') === null

/**
 * The main action of a screen, for a tap and for Enter or Space anywhere (a foot pedal sends
 * these). Held keys, double presses, and presses just after `what` changed do nothing.
 * A tapped control lets go of the keyboard, so that the next pedal press is the main action again.
 */
export const useMainAction = (what: string | null, act: () => void): (() => void) => {
  const latest = useRef(act)
  latest.current = act
  const guard = useGuard()
  const shown = useRef(what)
  useEffect(() => {
    if (shown.current !== what) guard.close()
    shown.current = what
  }, [guard, what])
  const press = () => {
    if (what === null || !guard.isOpen()) return
    guard.close()
    latest.current()
  }
  const pressed = useRef(press)
  pressed.current = press
  useEffect(() => {
    const down = (event: KeyboardEvent) => {
      if (!isPedal(event) || isElsewhere(event.target)) return
      event.preventDefault()
      if (!event.repeat) pressed.current()
    }
    const up = (event: KeyboardEvent) => {
      if (isPedal(event) && !isElsewhere(event.target)) event.preventDefault()
    }
    const letGo = (event: MouseEvent) => {
      const focused = document.activeElement
      if (event.detail > 0 && focused instanceof HTMLElement) focused.blur()
    }
    addEventListener('keydown', down)
    addEventListener('keyup', up)
    addEventListener('click', letGo)
    return () => {
      removeEventListener('keydown', down)
      removeEventListener('keyup', up)
      removeEventListener('click', letGo)
    }
  }, [])
  return press
}
