import type {
  IPolicyValidationContext,
  IPolicyValidationPlugin,
  PolicyValidationPluginReport,
  PolicyViolation,
} from 'aws-cdk-lib';
import { AwsSolutionsChecks } from 'cdk-nag';
import type { IConstruct } from 'constructs';
import { explained, type Explained } from './explained.ts';

export interface Judged {
  /** What no line explains. */
  readonly left: readonly PolicyViolation[];
  /** Lines that explained something. */
  readonly used: ReadonlySet<Explained>;
}

const whole = (pattern: RegExp, text: string): boolean => new RegExp(`^(?:${pattern.source})$`).test(text);

/** Holds a construct tree against the AwsSolutions rules and takes out what is explained. */
export function judge(scope: IConstruct, lines: readonly Explained[] = explained): Judged {
  const used = new Set<Explained>();
  const isExplained = (ruleName: string, constructPath: string): boolean => {
    const where = constructPath.slice(constructPath.indexOf('/') + 1);
    const line = lines.find((one) => whole(one.rule, ruleName) && whole(one.where, where));
    if (line) used.add(line);
    return line !== undefined;
  };
  const left = new AwsSolutionsChecks().validateScope(scope).violations.flatMap((violation) => {
    const violatingResources = violation.violatingResources.filter(
      ({ constructPath }) => !isExplained(violation.ruleName, constructPath ?? ''),
    );
    return violatingResources.length > 0 ? [{ ...violation, violatingResources }] : [];
  });
  return { left, used };
}

/**
 * The rules as the CDK asks them at every synth. The explanations are a table beside the code and not notes on constructs,
 * because a finding's name holds what the CDK makes of a reference between stacks, which nobody can write down beforehand.
 */
export class HouseRules implements IPolicyValidationPlugin {
  readonly name = 'AwsSolutions';

  validate(context: IPolicyValidationContext): PolicyValidationPluginReport {
    // Handed over beside what the type says; cdk-nag reads it there too.
    const { appConstruct } = context as Partial<{ readonly appConstruct: IConstruct }>;
    if (!appConstruct) throw new Error('this version of the CDK hands a rule no constructs');
    const { left } = judge(appConstruct);
    return { success: left.length === 0, violations: [...left] };
  }
}
