import { bench, useBench } from '../../store/bench';
import type { Command } from '../commands';
import { say } from '../screen';

interface CommandButtonProps {
  readonly command: Command;
  readonly words?: string;
}

/** A button for a command. One that cannot be done now stays in reach and says why. */
export function CommandButton({ command, words = command.label }: CommandButtonProps) {
  const can = useBench(command.can);
  const now = useBench((state) => (can === true ? command.now?.(state) : undefined)) ?? words;
  const [keys] = command.keys;
  const title = can === true ? now : can;
  return (
    <button
      type="button"
      className="tool"
      aria-label={can === true ? now : words}
      aria-disabled={can !== true}
      aria-keyshortcuts={command.keys.map(ariaKeys).join(' ') || undefined}
      title={keys ? `${title} (${keys})` : title}
      onClick={() => {
        const still = command.can(bench.getState());
        if (still === true) command.run();
        else say(still);
      }}
    >
      {words}
    </button>
  );
}

const ariaKeys = (keys: string): string => keys.replace('Ctrl', 'Control').replace('Esc', 'Escape').replaceAll(' ', '+');
