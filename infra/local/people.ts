import { roles, type Member, type Role } from '../../shared/roles.ts';
import type { UtilitySettings } from '../../shared/utility/settings.ts';

/** Who signs in for each role: those named, or, where nobody is, a person who goes by the role's name. */
export function membersFor(
  settings: UtilitySettings,
  named: Partial<Readonly<Record<Role, string>>>,
): Readonly<Record<Role, Member>> {
  const memberFor = (role: Role): Member => {
    const personId = named[role] ?? role;
    const name = settings.people.find((person) => person.personId === personId)?.name ?? personId;
    return { personId, name, roles: [role] };
  };
  return Object.fromEntries(roles.map((role) => [role, memberFor(role)])) as Record<Role, Member>;
}
