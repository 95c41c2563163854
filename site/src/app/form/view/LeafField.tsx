import { ChoiceField, ChoicesField, YesNoField } from './choice.tsx';
import { CodeField } from './code.tsx';
import { HydrantField } from './hydrant.tsx';
import { InstantField } from './instant.tsx';
import { PeopleField, PersonField } from './person.tsx';
import { lazy } from './Lazy.tsx';
import type { LeafProps, PropsOf } from './props.ts';
import { PositionField } from './position.tsx';
import { DateField, MoneyField, NumberField, QuantityField, TextField } from './typed.tsx';

// Fields of the forms that follow the first.
const CoefficientField = lazy<PropsOf<'coefficient'>>(
  async () => (await import('./coefficient.tsx')).CoefficientField,
);
const DiffuserConstantField = lazy<PropsOf<'diffuser-constant'>>(
  async () => (await import('./diffuserConstant.tsx')).DiffuserConstantField,
);
const OutagesField = lazy<PropsOf<'outages'>>(async () => (await import('./pick.tsx')).OutagesField);
const PickField = lazy<PropsOf<'pick'>>(async () => (await import('./pick.tsx')).PickField);

export function LeafField({ leaf, ...rest }: LeafProps) {
  switch (leaf.type) {
    case 'text':
      return leaf.codes ? (
        <CodeField leaf={leaf} codes={leaf.codes} {...rest} />
      ) : (
        <TextField leaf={leaf} {...rest} />
      );
    case 'number':
      return <NumberField leaf={leaf} {...rest} />;
    case 'quantity':
      return <QuantityField leaf={leaf} {...rest} />;
    case 'coefficient':
      return <CoefficientField leaf={leaf} {...rest} />;
    case 'diffuser-constant':
      return <DiffuserConstantField leaf={leaf} {...rest} />;
    case 'money':
      return <MoneyField leaf={leaf} {...rest} />;
    case 'date':
      return <DateField leaf={leaf} {...rest} />;
    case 'instant':
      return <InstantField leaf={leaf} {...rest} />;
    case 'choice':
      return <ChoiceField leaf={leaf} {...rest} />;
    case 'yes-no':
      return <YesNoField leaf={leaf} {...rest} />;
    case 'choices':
      return <ChoicesField leaf={leaf} {...rest} />;
    case 'person':
      return <PersonField leaf={leaf} {...rest} />;
    case 'people':
      return <PeopleField leaf={leaf} {...rest} />;
    case 'hydrant':
      return <HydrantField leaf={leaf} {...rest} />;
    case 'position':
      return <PositionField leaf={leaf} {...rest} />;
    case 'outages':
      return <OutagesField leaf={leaf} {...rest} />;
    case 'pick':
      return <PickField leaf={leaf} {...rest} />;
    case 'kept':
      return null;
  }
}
