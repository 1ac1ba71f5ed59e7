import { BaseSequencer, type TestSpecification } from "vitest/node";

/** Longest first: files of a browser wait much, and files of the sources are short enough to fill both cores to the end. */
const PROJECTS = ["pages", "workbench", "sources"];

const rank = ({ project }: TestSpecification) => PROJECTS.indexOf(project.name);

/** Files of a project one after the other, projects in our order instead of that of their names. */
export class ProjectsInOrder extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    return (await super.sort(files)).sort((one, other) => rank(one) - rank(other));
  }
}
