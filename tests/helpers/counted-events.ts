/** Where events arrive, and how many listen there. */
export const countedEvents = () => {
  const target = new EventTarget();
  const listening = new Set<unknown>();
  return {
    count: (): number => listening.size,
    addEventListener: (type: string, listener: EventListener): void => {
      listening.add(listener);
      target.addEventListener(type, listener);
    },
    removeEventListener: (type: string, listener: EventListener): void => {
      listening.delete(listener);
      target.removeEventListener(type, listener);
    },
    dispatchEvent: (event: Event): boolean => target.dispatchEvent(event),
  };
};
