import { useKeyPresses } from '../../ui/use-key-presses.ts';

/** 1, 2, 3 take what stands first, second, third in the dialog that is open; a field being typed in keeps its keys. */
export function useChoiceKeys(choices: readonly (() => void)[]): void {
  useKeyPresses((event) => {
    const { target, key, ctrlKey, metaKey, altKey } = event;
    const typing = target instanceof HTMLElement && ['INPUT', 'TEXTAREA'].includes(target.tagName);
    if (typing || ctrlKey || metaKey || altKey) return;
    const choose = /^[1-9]$/.test(key) ? choices[Number(key) - 1] : undefined;
    if (!choose) return;
    event.preventDefault();
    choose();
  });
}
