ALTER TABLE `line` ADD `overrun` integer DEFAULT 0 NOT NULL;--> statement-breakpoint
-- What stock worth a hundred weighs, beside the other weights.
UPDATE `settings` SET `weights` = json_set(`weights`, '$.material', 10);--> statement-breakpoint
-- The history keeps whole rows: they get the new fields too, or an older step could not be undone.
UPDATE `step` SET `changes` = (
	SELECT json_group_array(json(CASE json_extract(`change`.`value`, '$.kind')
		WHEN 'line' THEN json_set(`change`.`value`, '$.before.overrun', 0, '$.after.overrun', 0)
		WHEN 'settings' THEN json_set(`change`.`value`, '$.before.weights.material', 10, '$.after.weights.material', 10)
		ELSE `change`.`value` END))
	FROM json_each(`step`.`changes`) AS `change`
);
