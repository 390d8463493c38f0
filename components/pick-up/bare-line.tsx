import styles from '#components/pick-up/pick-up.module.css'

/** The wells and pans as they stand in the room, with nothing on them. */
export function BareLine({ wells }: { readonly wells: readonly number[] }) {
  return (
    <div className={styles.bareLine} aria-hidden="true">
      {wells.map((pans, well) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: wells are told by their place alone
        <span key={well} style={{ flexGrow: pans }}>
          {Array.from({ length: pans }, (_, pan) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: pans are told by their place alone
            <i key={pan} />
          ))}
        </span>
      ))}
    </div>
  )
}
