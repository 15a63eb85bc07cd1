import { bothWays, ListQueryDto } from '#lib/catalogue';
import { ChoiceField } from '#lib/platform';

export class TemplateListQueryDto extends ListQueryDto {
  @ChoiceField(bothWays('name', 'version'), {
    optional: true,
    description: "By name when left out; '-' turns the order round.",
  })
  sort?: string;
}
