import styles from '#components/counter/pan.module.css'
import type { Component } from '#lib/station/station-document.ts'

/** A pan's short name, broken as its station says. */
export function PanName({ component }: { readonly component: Component }) {
  return (
    <span className={styles.name}>
      {component.short.map((line) => (
        <span key={line}>{line} </span>
      ))}
    </span>
  )
}
