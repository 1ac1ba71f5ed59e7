/** What the ribbon and the menu of a cell can ask for; the manifest names each as a function. */
export const COMMANDS = ["thisCell", "insertFunction", "recalculate", "shareCopy", "newPlan"] as const;

export type Command = (typeof COMMANDS)[number];

/**
 * Lets the buttons of the manifest do something.
 *
 * @param doing - Called with what was pressed once the pane is in sight, but for a recalculation, which needs none.
 */
export function associateCommands(doing: (command: Command) => void | Promise<void>): void {
  if (typeof Office === "undefined" || Office.actions === undefined) return;
  for (const command of COMMANDS) {
    Office.actions.associate(command, async (event: Office.AddinCommands.Event) => {
      try {
        if (command !== "recalculate") await Office.addin.showAsTaskpane();
        await doing(command);
      } finally {
        // Excel keeps the button busy until it hears this.
        event.completed();
      }
    });
  }
}
