import { useEffect } from 'react';
import { useSelected } from './session-context';

/** Puts the day or night look on the page: as chosen, or as the system has it. */
export const useLook = (): void => {
  const look = useSelected((state) => state.settings.look);
  useEffect(() => {
    const night = window.matchMedia('(prefers-color-scheme: dark)');
    const show = (): void => {
      document.documentElement.dataset.look = look === 'system' ? (night.matches ? 'night' : 'day') : look;
    };
    show();
    night.addEventListener('change', show);
    return () => night.removeEventListener('change', show);
  }, [look]);
};
