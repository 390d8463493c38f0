import { type ReactNode, useLayoutEffect, useRef, useState } from 'react'
import styles from '#components/ui/notch.module.css'
import { type Box, notchPath } from '#components/ui/outline.ts'

interface NotchProps {
  /** Ids of what it is about: elements inside with `data-notch` set to one of them. */
  readonly about: readonly string[]
  readonly kind?: 'main' | 'no' | 'care'
  readonly className?: string
  /** The line, and below it one element with `data-notch-panel`. */
  readonly children: ReactNode
}

const PAD_PX = 5
const RADIUS_PX = 14

const boxIn = (root: DOMRect, element: Element): Box => {
  const { left, top, right, bottom } = element.getBoundingClientRect()
  return {
    left: left - root.left,
    top: top - root.top,
    right: right - root.left,
    bottom: bottom - root.top,
  }
}

const measured = (root: HTMLElement, about: readonly string[]): string => {
  const panel = root.querySelector('[data-notch-panel]')
  if (!panel) return ''
  const frame = root.getBoundingClientRect()
  const abouts = about.flatMap((id) => [
    ...root.querySelectorAll(`[data-notch="${CSS.escape(id)}"]`),
  ])
  return notchPath(
    boxIn(frame, panel),
    abouts.map((element) => boxIn(frame, element)),
    { pad: PAD_PX, radius: RADIUS_PX },
  )
}

/** One outline around a panel and the pans that it is about, so that no sentence says which. */
export function Notch({ about, kind = 'main', className, children }: NotchProps) {
  const root = useRef<HTMLDivElement>(null)
  const [path, setPath] = useState('')
  const named = about.join('\n')
  useLayoutEffect(() => {
    const at = root.current
    if (!at) return
    const draw = () => setPath(measured(at, named === '' ? [] : named.split('\n')))
    draw()
    const watch = new ResizeObserver(draw)
    watch.observe(at)
    // A line that is walked moves its pans without changing their size.
    at.addEventListener('scroll', draw, { capture: true, passive: true })
    for (const inside of at.querySelectorAll('[data-notch], [data-notch-panel]'))
      watch.observe(inside)
    return () => {
      watch.disconnect()
      at.removeEventListener('scroll', draw, { capture: true })
    }
  }, [named])
  return (
    <div
      ref={root}
      data-notch-root=""
      className={className ? `${styles.notch} ${className}` : styles.notch}
    >
      <svg className={styles.outline} data-kind={kind} aria-hidden="true">
        <path d={path} />
      </svg>
      {children}
    </div>
  )
}
