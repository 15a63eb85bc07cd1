import { Column, Entity, PrimaryColumn } from 'typeorm';
import type { Dispensing } from '../domain/presentation-rules.js';

/** Decimals are text here, as pg gives them; views and rules parse them. */
@Entity('presentations')
export class PresentationEntity {
  @PrimaryColumn('uuid')
  id: string;

  @Column('uuid', { name: 'practice_id' })
  practiceId: string;

  @Column('uuid', { name: 'consumable_id' })
  consumableId: string;

  @Column('uuid', { name: 'supplier_id', nullable: true })
  supplierId: string | null;

  @Column('text')
  name: string;

  @Column('text')
  dispensing: Dispensing;

  @Column('integer', { name: 'containers_per_pack' })
  containersPerPack: number;

  @Column('numeric', { name: 'content_per_container' })
  contentPerContainer: string;

  @Column('text', { name: 'device_identifier', nullable: true })
  deviceIdentifier: string | null;

  @Column('text', { name: 'article_code', nullable: true })
  articleCode: string | null;

  @Column('numeric', { name: 'list_price', nullable: true })
  listPrice: string | null;

  @Column('boolean')
  active: boolean;
}
