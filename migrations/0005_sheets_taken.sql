ALTER TABLE `cutList` ADD `taken` integer;--> statement-breakpoint
-- The history keeps whole rows: they get the new field too, or an older step could not be undone.
UPDATE `step` SET `changes` = (
	SELECT json_group_array(json(CASE json_extract(`change`.`value`, '$.kind')
		WHEN 'cutList' THEN json_set(`change`.`value`, '$.before.taken', NULL, '$.after.taken', NULL)
		ELSE `change`.`value` END))
	FROM json_each(`step`.`changes`) AS `change`
);
