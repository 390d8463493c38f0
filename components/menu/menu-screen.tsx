'use client'

import { useEffect, useState } from 'react'
import styles from '#components/menu/menu.module.css'
import { StationScreen } from '#components/menu/station-screen.tsx'
import { StationsScreen } from '#components/menu/stations-screen.tsx'
import { MenuWordsProvider } from '#components/menu/words.tsx'

const stationIn = (search: string): string => new URLSearchParams(search).get('station') ?? ''

/** Which station is set up: one that is chosen or begun first, then the one in the address. */
function Chosen() {
  const [station, setStation] = useState<string | null>(null)
  useEffect(() => {
    const read = () => setStation(stationIn(location.search))
    read()
    addEventListener('popstate', read)
    return () => removeEventListener('popstate', read)
  }, [])
  const open = (id: string) => {
    history.pushState(null, '', id === '' ? '/menu' : `/menu?station=${id}`)
    setStation(id)
  }
  if (station === null) return <main className={styles.page} />
  return station === '' ? (
    <StationsScreen onStation={open} />
  ) : (
    <StationScreen key={station} station={station} onStations={() => open('')} />
  )
}

/** Where a station is set up without touching a file: the lead's and the person in charge's. */
export function MenuScreen() {
  return (
    <MenuWordsProvider>
      <Chosen />
    </MenuWordsProvider>
  )
}
