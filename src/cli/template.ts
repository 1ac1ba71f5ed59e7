import { template } from "./commands/template";
import { runCommand } from "./run-command";

runCommand(template);
