import { useState } from 'react'
import { About } from '#components/menu/fields/help.tsx'
import { LimitRow } from '#components/menu/house/limit-row.tsx'
import styles from '#components/menu/house/limits.module.css'
import menu from '#components/menu/menu.module.css'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { isRecord } from '#lib/editor/draft.ts'
import { LIMIT_GROUPS, type LimitGroup } from '#lib/editor/limits/own-limit.ts'

const GROUPS = Object.keys(LIMIT_GROUPS) as readonly LimitGroup[]

/** Every limit that food is held to, and what local code says otherwise. */
export function LimitsLeaf() {
  const { limits: words } = useMenuWords()
  const { draft } = useMenu()
  const [chosen, setChosen] = useState<LimitGroup>('holding')
  const limits = draft.rows.safety?.limits
  const own = isRecord(limits) ? Object.keys(limits) : []
  return (
    <About of="limits">
      <div className={styles.limits}>
        <p>
          {words.count(own.length)} {words.decides}
        </p>
        <fieldset className={menu.chips}>
          <legend className="visually-hidden">{words.parts}</legend>
          {GROUPS.map((group) => {
            const count = LIMIT_GROUPS[group].filter((name) => own.includes(name)).length
            return (
              <button
                key={group}
                type="button"
                aria-pressed={group === chosen}
                onClick={() => setChosen(group)}
              >
                {words.groups[group]}
                {count > 0 && ` · ${count}`}
              </button>
            )
          })}
        </fieldset>
        <ul className={styles.rows}>
          {LIMIT_GROUPS[chosen].map((name) => (
            <LimitRow key={name} name={name} />
          ))}
        </ul>
      </div>
    </About>
  )
}
