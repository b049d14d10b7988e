ALTER TABLE `material` ADD `temper` text;--> statement-breakpoint
ALTER TABLE `material` ADD `deductions` text DEFAULT '[]' NOT NULL;--> statement-breakpoint
ALTER TABLE `part` ADD `bendOrder` text;--> statement-breakpoint
ALTER TABLE `part` ADD `family` text;--> statement-breakpoint
ALTER TABLE `settings` ADD `partRules` text DEFAULT '{}' NOT NULL;--> statement-breakpoint
-- The history keeps whole rows: they get the new fields too, or an older step could not be undone.
UPDATE `step` SET `changes` = (
	SELECT json_group_array(json(CASE json_extract(`change`.`value`, '$.kind')
		WHEN 'material' THEN json_set(`change`.`value`, '$.before.temper', NULL, '$.before.deductions', json('[]'), '$.after.temper', NULL, '$.after.deductions', json('[]'))
		WHEN 'part' THEN json_set(`change`.`value`, '$.before.bendOrder', NULL, '$.before.family', NULL, '$.after.bendOrder', NULL, '$.after.family', NULL)
		WHEN 'settings' THEN json_set(`change`.`value`, '$.before.partRules', json('{}'), '$.after.partRules', json('{}'))
		ELSE `change`.`value` END))
	FROM json_each(`step`.`changes`) AS `change`
);
