import { useEffect, useSyncExternalStore } from 'react'
import { applyMillimetres } from '#components/device/millimetres.ts'

/** What every hot screen does with its device: true millimetres, and sound from the first touch. */
export const useDevice = (): void => {
  useEffect(() => {
    applyMillimetres()
    // Comes after the first load, and stands ready before a hand is there.
    const sounding = import('#components/device/use-sound.ts')
    let unlockSound = (): void => void sounding.then(({ sound }) => sound().unlock())
    void sounding.then(({ sound }) => {
      unlockSound = () => sound().unlock()
    })
    const unlock = (event: Event) => {
      const isSwitch = event.target instanceof Element && event.target.closest('[data-sound]')
      if (!isSwitch) unlockSound()
    }
    document.addEventListener('pointerup', unlock)
    document.addEventListener('keyup', unlock)
    return () => {
      document.removeEventListener('pointerup', unlock)
      document.removeEventListener('keyup', unlock)
    }
  }, [])
}

/** How much room there is: a phone, a 10-inch tablet at 1024 px, one at 1280 px, more. */
export type Room = 'phone' | 'small' | 'medium' | 'large'

const roomNow = (): Room =>
  innerWidth <= 700
    ? 'phone'
    : innerWidth <= 1150
      ? 'small'
      : innerWidth <= 1300
        ? 'medium'
        : 'large'

const onResize = (listener: () => void) => {
  addEventListener('resize', listener)
  return () => removeEventListener('resize', listener)
}

/** The room of this screen, followed as it is turned. */
export const useRoom = (): Room => useSyncExternalStore(onResize, roomNow, () => 'medium' as const)

/** Whether the screen is a phone's: the line wraps by well there. */
export const useNarrow = (): boolean => useRoom() === 'phone'
