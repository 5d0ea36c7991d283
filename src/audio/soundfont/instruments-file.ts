/** Put in by the build (`.dev/instruments.mjs`): where the recorded instruments lie, from the page's own address. */
declare const INSTRUMENTS: string;

/** Fetches the file of the recorded instruments, some 2 MB. Rejects when it cannot be had. */
export const fetchInstruments = async (): Promise<Blob> => {
  const response = await fetch(new URL(INSTRUMENTS, document.baseURI));
  if (!response.ok) throw new Error(`the recorded instruments were answered with ${response.status}`);
  return response.blob();
};
