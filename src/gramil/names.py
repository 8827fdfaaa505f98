"""Every figure of the graph by name, typed: made by `make names`, never edited by hand.

`from gramil import names as n`, then `n.slot_depth_setting`, `n.fret_position[12]`, `n.saw_main.kerf`. At run time a
name is a plain reference; the graph refuses one that leads nowhere when what pages show is read.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from gramil.reference import Ref

SHOWS: dict[str, tuple[str, ...]] = {
    "drawing_braces": ("brace_crossings", "brace_list",),
    "drawing_heights": ("crown_height", "heights_relief",),
    "drawing_mould": ("body_mould_half_width", "body_mould_length", "body_mould_thickness",),
    "drawing_neck_facets": ("carve_facet_angle",),
    "drawing_nut": ("board_nut_length", "string_spread_along_nut",),
    "drawing_setup_blank": ("blank_length", "blank_thickness", "blank_width",),
    "drawing_setup_deepen": ("slot_depth_at_end", "slot_need", "slot_to_deepen",),
    "drawing_setup_neck_rod": ("neck_rod_depth", "neck_rod_width", "neck_section_under_channel", "rod_corner",),
    "drawing_setup_neck_scarf": ("head_angle", "head_blank", "head_scarf_length", "plank_scarf_run", "plank_shaft",),
    "drawing_setup_nut": ("nut_slot_over_board",),
    "drawing_side": ("side_stations",),
    "drawing_top_modes": ("mode_list",),
    "finding_action_bass": ("heights_action_bass", "limit_action_bass_least", "limit_action_bass_most",),
    "finding_action_treble": ("heights_action_treble", "limit_action_treble_least", "limit_action_treble_most",),
    "finding_back_bow": ("back_bow_least", "back_bow_most", "limit_back_bow", "saw_kerf",),
    "finding_bead_bite": ("limit_bead_bite_caution", "saw_kerf", "wire_fits",),
    "finding_behind_channel": ("channel_list", "limit_behind_channel",),
    "finding_bend": ("body_bend_ratio", "limit_bend_ratio",),
    "finding_binding_bend": ("limit_bend_ratio", "strip_list",),
    "finding_binding_cover": ("channel_list", "limit_binding_cover",),
    "finding_binding_step": ("limit_binding_step", "swell_step_dry",),
    "finding_blank": ("blank_width",),
    "finding_blocks": ("block_at_end", "block_at_middle", "block_at_nut", "limit_block_misfit",),
    "finding_board_moisture": ("air_pieces", "blank_choice",),
    "finding_board_over_hole": ("soundhole_from_board",),
    "finding_body": ("body_perimeter",),
    "finding_body_length": ("body_length", "top_length",),
    "finding_body_rise": ("heights_body_rise", "limit_body_rise_least", "limit_body_rise_most",),
    "finding_brace_low": ("brace_low",),
    "finding_brace_outside": ("brace_list",),
    "finding_brace_stock": ("stick_list",),
    "finding_braces_apart": ("limit_brace_room", "room_between_braces",),
    "finding_braces_meet": ("brace_list",),
    "finding_braces_to_blocks": ("limit_brace_room", "room_braces_to_blocks",),
    "finding_braces_to_hole": ("limit_brace_to_hole", "room_braces_to_hole",),
    "finding_break_angle": ("bridge_break_angle", "limit_break_angle_saddle", "limit_break_angle_saddle_least",),
    "finding_break_at_nut": ("head_break_angle", "limit_break_angle_least", "limit_break_angle_most",),
    "finding_break_points": ("limit_saddle_edge", "saddle_to_face",),
    "finding_breaking": ("limit_breaking_reserve", "limit_breaking_reserve_least", "string_reserve",),
    "finding_bridge_holds": ("bridge_length",),
    "finding_bridge_in_bout": ("body_width_share", "limit_bridge_width_share",),
    "finding_carve_gauged": ("carve_gauged", "limit_carve_stations",),
    "finding_channel_cutters": ("channel_cuts", "limit_binding_proud_least", "limit_binding_proud_most",),
    "finding_channel_lean": ("channel_tilts", "limit_channel_lean",),
    "finding_clearance": ("limit_clearance_least", "limit_clearance_most", "slots_clearance",),
    "finding_courses": ("limit_single_strings", "strings_count",),
    "finding_crest_loss": ("limit_crest_loss_least", "limit_crest_loss_most", "slots_crest_loss",),
    "finding_crossing_room": ("limit_crossing_room", "room_crossing_to_hole",),
    "finding_crown_left": ("crown_height", "limit_crown_least",),
    "finding_deepening_saw": ("saw_deepening", "wire_tang_thickness",),
    "finding_dome": ("dome_rise_dry",),
    "finding_edge_margin": ("limit_edge_margin", "string_margin_bass", "string_margin_treble",),
    "finding_edge_uneven": ("limit_edge_uneven", "thickness_edge_spread",),
    "finding_estimates": ("string_weight",),
    "finding_gluing_air": ("air_humidity", "limit_gluing_humidity_least", "limit_gluing_humidity_most",),
    "finding_heel": ("body_depth_neck", "neck_heel_depth",),
    "finding_heel_carved": ("carve_deepest", "neck_heel_depth",),
    "finding_hump": ("arch_hump", "limit_string_hump",),
    "finding_index_template": ("card_proof_octave", "fret_angle", "limit_slot_position", "template_matches",),
    "finding_inner_strings": ("limit_string_error_cents", "string_error",),
    "finding_intonation": ("intonation_cents_after", "intonation_nut_best", "intonation_rms_after", "intonation_rms_all_after", "intonation_saddle_best", "limit_cents_rms", "limit_cents_worst",),
    "finding_kerfs_agree": ("limit_fit_loosest", "saw_kerf_over",),
    "finding_ledge": ("core_inset", "ledge_choice", "limit_binding_proud_least", "limit_binding_proud_most",),
    "finding_left_under_slot": ("limit_under_slot", "slot_left_least",),
    "finding_levelling": ("thickness_wedge_angle",),
    "finding_lining_under": ("channel_list", "limit_lining_under",),
    "finding_neck_angle": ("limit_neck_angle_least", "limit_neck_angle_most", "neck_angle_target",),
    "finding_neck_plank": ("limit_plank_over", "plank_over",),
    "finding_neck_reset": ("heel_wedge_to_take", "limit_heel_wedge", "neck_set_exposed",),
    "finding_neck_stock": ("plank_choice",),
    "finding_nut": ("intonation_nut_best", "intonation_rms_all_after", "intonation_rms_best", "limit_nut_gain",),
    "finding_nut_slots": ("limit_nut_first_least", "limit_nut_first_most", "nut_slot_over_first",),
    "finding_over_top": ("limit_over_top_least", "limit_over_top_most", "neck_set_over_top_mean",),
    "finding_pairs": ("limit_pair_least", "limit_pair_most", "string_pair_bridge", "string_pair_nut",),
    "finding_permits": ("stuff_list",),
    "finding_pilot": ("limit_pilot_least", "slot_kerf_at_end",),
    "finding_pins": ("bridge_hold_spacing", "bridge_hold_wall", "bridge_hold_wood", "limit_pin_spacing", "limit_pin_spacing_least", "limit_pin_to_saddle",),
    "finding_pins_clear": ("limit_pin_room", "room_pins_to_braces",),
    "finding_plate_glued": ("channel_list", "limit_plate_glued",),
    "finding_plate_outside": ("plate_back",),
    "finding_plate_to_braces": ("limit_brace_room", "room_plate_to_braces",),
    "finding_plate_to_legs": ("limit_plate_to_leg", "room_plate_to_legs",),
    "finding_plate_under_pins": ("limit_plate_under_pin", "room_pins_in_plate",),
    "finding_relief_too_little": ("limit_relief_least", "relief_predicted_least", "relief_predicted_most",),
    "finding_relief_too_much": ("limit_relief_most", "limit_rod_reach", "relief_for_rod_least", "relief_for_rod_most", "relief_predicted_least", "string_pull_total",),
    "finding_relief_wanted": ("heights_relief", "limit_relief_least", "limit_relief_most",),
    "finding_rod_blind_end": ("limit_rod_blind", "rod_blind_left",),
    "finding_rod_corner": ("limit_beside_rod", "rod_corner",),
    "finding_rod_over": ("limit_over_rod", "rod_over",),
    "finding_rod_reach": ("limit_rod_short", "rod_unreached",),
    "finding_rod_under_head": ("limit_beside_rod", "rod_under_head",),
    "finding_rows_of_pins": ("bridge_hold_between", "bridge_hold_clear", "bridge_hold_wood_across", "limit_pin_spacing_least", "limit_string_to_pin",),
    "finding_saddle_exposed": ("limit_exposed_least", "limit_exposed_most", "neck_set_exposed_mean",),
    "finding_saddle_high": ("limit_exposed_stop_most", "neck_set_exposed",),
    "finding_saddle_in_slot": ("limit_saddle_shows", "saddle_showing",),
    "finding_saddle_low": ("limit_exposed_stop_least", "neck_set_exposed",),
    "finding_saw": ("saw_kerf", "wire_tang_thickness",),
    "finding_scarf": ("head_scarf_length", "plank_head_along",),
    "finding_shop": ("shop_name",),
    "finding_side_between": ("channel_side_left", "limit_side_between",),
    "finding_sideways_at_nut": ("head_sideways_bend", "head_straight_y", "limit_sideways_bend",),
    "finding_slack": ("limit_pull_least", "string_pull",),
    "finding_slot_depth": ("slot_depth_at_end", "slot_kerf_at_end", "wire_tang_depth",),
    "finding_sprout": ("limit_sprout", "sprout_moisture", "sprout_most",),
    "finding_stiffness_range": ("intonation_rms_all_after", "intonation_rms_softest", "intonation_rms_stiffest", "limit_cents_rms",),
    "finding_string_gap": ("string_gap_nut",),
    "finding_string_on_crown": ("height_over_crown",),
    "finding_strings_in_slots": ("head_posts_y", "head_slot_room", "head_slot_width", "limit_slot_room",),
    "finding_strings_past_posts": ("head_post_clear", "head_posts_y", "limit_string_to_post",),
    "finding_tongue": ("limit_tongue_gap", "neck_set_tongue_gap",),
    "finding_top_action": ("heights_body_rise", "pulled_action",),
    "finding_top_modes": ("mode_list",),
    "finding_top_solved": ("pulled_turn",),
    "finding_top_strain": ("limit_top_strain_most", "pulled_strain_brace", "pulled_strain_top", "pulled_strained_brace",),
    "finding_top_turn": ("limit_top_turn_least", "limit_top_turn_most", "pulled_turn", "pulled_turn_least", "pulled_turn_most",),
    "finding_torque": ("bridge_torque", "limit_torque_least", "limit_torque_most",),
    "finding_tried_wood": ("fitted_pieces",),
    "finding_tuner_edge": ("head_hole_to_edge", "limit_hole_edge",),
    "finding_tuners_apart": ("head_holes_apart", "limit_holes_apart",),
    "finding_under_channel": ("limit_under_rod", "neck_section_under_channel",),
    "finding_under_purfling": ("channel_list", "limit_under_purfling",),
    "finding_under_saddle_slot": ("bridge_under_slot", "limit_under_saddle_slot",),
    "finding_uneven": ("limit_pull_uneven", "string_pull_ratio",),
    "finding_wings": ("limit_wing_off_leg", "room_bridge_to_legs",),
    "finding_wire_fit": ("limit_fit_loosest", "limit_fit_tightest", "saw_kerf", "wire_fits",),
    "finding_wire_on_hand": ("wire_on_hand", "wire_total",),
    "finding_wood_stiffness": ("board_modulus", "board_wood", "carve_wood", "neck_modulus",),
    "piece_arch_cards": ("card_arches",),
    "piece_arch_end": ("card_arches",),
    "piece_arch_nut": ("card_arches",),
    "piece_body_places": ("body_bouts", "body_saddle", "soundhole_centre",),
    "piece_body_sizes": ("body_bouts", "body_length",),
    "piece_bridge_sizes": ("bridge_length", "bridge_width_square",),
    "piece_bridge_words": ("bridge_front", "bridge_front_from_join", "bridge_front_from_nut", "bridge_front_from_octave", "bridge_hold_behind", "bridge_hold_below", "bridge_hold_second", "bridge_hold_spread", "bridge_pin_diameter", "bridge_spread", "saddle_angle", "saddle_length", "saddle_position", "saddle_slot_depth", "saddle_thickness",),
    "piece_cut_list": ("plank_pieces",),
    "piece_cuts": ("carve_stations",),
    "piece_depth_cards": ("card_depths", "saw_kerf",),
    "piece_edge_back": ("body_wall", "channel_cuts", "channel_list",),
    "piece_edge_top": ("body_wall", "channel_cuts", "channel_list",),
    "piece_facets": ("carve_lines", "carve_stations",),
    "piece_gap_cards": ("card_gaps",),
    "piece_gauge_cards": ("carve_stations",),
    "piece_head_figures": ("head_angle", "head_blank", "head_break_angle", "head_scarf_length",),
    "piece_head_words": ("scale_bass", "scale_join", "scale_treble",),
    "piece_laser": ("shop_laser_kerf",),
    "piece_layout_sizes": ("board_tail_position", "board_width", "board_width_at_tail", "fret_position", "nut_width",),
    "piece_ledge_cutter": ("ledge_choice",),
    "piece_ledge_sizes": ("core_inset", "ledge_choice",),
    "piece_level_sizes": ("board_thickness", "thickness_at_crest", "thickness_wedge",),
    "piece_list_back": ("brace_list",),
    "piece_list_top": ("brace_list",),
    "piece_lying_sizes": ("bridge_length", "bridge_width_square",),
    "piece_lying_words": ("saddle_set_back",),
    "piece_markers_between": ("marker_offset", "marker_position", "markers_diameter",),
    "piece_markers_edge": ("marker_side_depth", "markers_side_diameter",),
    "piece_nut_card": ("nut_slot_over_crest",),
    "piece_plan_side_sizes": ("back_bow_length", "body_depth_neck", "body_depth_tail", "neck_angle_target", "neck_heel_depth",),
    "piece_plan_sizes": ("back_bow_length", "body_length", "body_width", "bridge_front_edge", "scale_run",),
    "piece_plank_sizes": ("back_bow_length", "head_angle", "head_blank", "head_scarf_length", "neck_heel_depth", "plank_head_along", "plank_shaft",),
    "piece_rail_proof": ("card_proof_octave", "card_proof_pin",),
    "piece_rail_words": ("scale_bass", "scale_frets", "shop_pin_offset", "shop_template_pin",),
    "piece_rod": ("rod_end", "rod_start_away",),
    "piece_router": ("shop_router_kerf",),
    "piece_saddle_above": ("saddle_off_line",),
    "piece_saddle_behind": ("saddle_tall",),
    "piece_saddle_card": ("saddle_tall",),
    "piece_section_sizes": ("board_width_at_fret", "slot_depth_at_crest", "slot_left_at_crest", "thickness_at_crest", "thickness_at_edge_bass", "thickness_at_edge_treble",),
    "piece_set_backs": ("saddle_set_back",),
    "piece_set_figures": ("bridge_thickness", "heel_wedge", "neck_angle_target", "neck_set_board_at_join", "neck_set_dome_rise", "neck_set_straightedge", "saddle_exposed",),
    "piece_setup_flats": ("carve_lines", "carve_stations",),
    "piece_side_figures": ("back_bow_length", "heel_wedge", "neck_angle_face", "neck_depth_first", "neck_depth_tenth", "neck_heel_depth",),
    "piece_sizes": ("board_length", "fret_position", "nut_width",),
    "piece_slot_along": ("saw_kerf", "slot_depth_setting",),
    "piece_slot_sizes": ("head_roller_depth", "head_slot_width", "head_slots", "head_slots_apart",),
    "piece_small_braces": ("brace_list",),
    "piece_small_side_stations": ("side_stations",),
    "piece_strung_figures": ("height_at_saddle", "height_over_chord", "height_over_crown",),
    "piece_tail_size": ("board_width_at_tail",),
    "piece_taper_board": ("board_half_taper_angle",),
    "piece_taper_carriage": ("jig_taper", "taper_centre_nut", "taper_centre_tail",),
    "piece_title_block": ("body_length", "bridge_length", "bridge_width_square", "saddle_angle", "scale_run", "soundhole_diameter",),
    "piece_tuner_list": ("head_hole", "head_posts_y", "head_sideways_bend", "head_width",),
    "piece_tuner_sizes": ("head_posts_x", "head_reach",),
    "piece_unrolled_words": ("side_length",),
    "piece_wire_board": ("saw_kerf",),
    "piece_wire_end": ("wire_nip_back",),
    "piece_wire_profile": ("wire_bead_thickness", "wire_crown_height", "wire_crown_width", "wire_tang_depth", "wire_tang_thickness",),
    "setup_arch": ("arch_fall_at_nut_end", "arch_fall_at_tail_end", "arching_edge_middle", "arching_fall_middle", "arching_radius_end", "arching_radius_middle", "arching_radius_nut", "block_at_end", "block_at_middle", "block_at_nut", "drawing_setup_arch", "limit_tolerance_height", "limit_tolerance_radius", "station_middle_fret", "stuff_list", "thickness_before_levelling",),
    "setup_binding_bend": ("body_tightest_bend", "limit_strip_over", "limit_tolerance_height", "side_stations", "strip_length", "strip_list", "stuff_list",),
    "setup_blank": ("blank_choice", "blank_length", "blank_thickness", "blank_width", "board_wood", "drawing_setup_blank", "lean_corner_nut_bass", "lean_corner_nut_treble", "lean_corner_tail_bass", "lean_corner_tail_treble", "limit_tolerance_height", "stuff_list",),
    "setup_board_binding": ("binding_purfling", "binding_thickness", "board_width_at_fret", "core_inset", "limit_gluing_humidity", "limit_tolerance_height", "limit_tolerance_width", "station_middle_fret", "stuff_list",),
    "setup_body_binding": ("channel_list", "channel_side_left", "drawing_setup_channels", "limit_binding_proud_least", "limit_gluing_humidity", "stuff_list",),
    "setup_brace_back": ("brace_crossings", "brace_list", "drawing_back_inside", "limit_gluing_humidity", "limit_tolerance_height", "stuff_list",),
    "setup_brace_stock": ("brace_crossings", "drawing_setup_braces", "stick_billets", "stick_list", "stuff_list",),
    "setup_brace_top": ("brace_crossings", "brace_list", "drawing_top_inside", "limit_gluing_humidity", "limit_tolerance_height", "stuff_list",),
    "setup_bridge": ("action_fret", "bridge_front_from_join", "bridge_front_from_nut", "bridge_front_from_octave", "bridge_length", "bridge_spread", "bridge_thickness", "bridge_torque", "bridge_width_square", "drawing_setup_bridge", "limit_tolerance_bridge", "limit_tolerance_outline", "saddle_position", "string_pull_said", "stuff_list",),
    "setup_bridge_plate": ("body_saddle", "bridge_plate_length_back", "bridge_plate_length_front", "bridge_plate_thickness", "bridge_plate_wood", "drawing_top_inside", "limit_tolerance_height", "limit_tolerance_outline", "plate_front", "plate_lean", "plate_length", "plate_width", "stuff_list",),
    "setup_caliper": ("fret_cents_per_tenth", "fret_position", "fret_step",),
    "setup_channels": ("channel_cuts", "channel_tilts", "drawing_setup_channels", "limit_binding_proud_least", "limit_tolerance_height", "stuff_list",),
    "setup_deepen": ("drawing_setup_deepen", "limit_pilot_least", "limit_tolerance_height", "saw_deepening", "saw_kerf", "slot_kerf_at_end", "slot_need", "slot_to_deepen", "stop_deepest_fret", "stuff_list", "wire_name", "wire_tang_depth", "wire_tang_thickness",),
    "setup_flush": ("body_back_thickness", "body_plate_allowance", "channel_flush_cutter", "limit_tolerance_height", "stuff_list", "top_thickness",),
    "setup_in_tune": ("action_fret", "intonation_cents_after", "intonation_from_fret", "intonation_nut_best", "intonation_nut_forward", "intonation_octave_move", "intonation_rms_after", "intonation_rms_all_after", "intonation_rms_all_before", "intonation_rms_before", "intonation_rms_best", "intonation_to_fret", "limit_cents_worst", "pair_rms_all_on_one", "pair_rms_all_on_two", "pair_rms_on_one", "pair_rms_on_two", "saddle_set_back", "saddle_set_back_best", "stuff_list",),
    "setup_layout": ("board_length", "board_nut_position", "board_width_at_tail", "drawing_setup_layout", "edge_x_bass", "edge_x_treble", "edge_y_bass", "edge_y_treble", "fret_position", "limit_slot_position", "limit_tolerance_outline", "limit_tolerance_width", "nut_width", "station_middle_fret", "stuff_list",),
    "setup_ledge": ("binding_purfling", "binding_thickness", "core_inset", "drawing_setup_ledge", "feed_agreeing_edge", "feed_other_edge", "ledge_choice", "limit_binding_proud_least", "limit_binding_proud_most", "limit_slot_position", "limit_tolerance_height", "nut_width", "stuff_list",),
    "setup_level": ("drawing_setup_level", "limit_tolerance_height", "slot_left_least", "station_middle_fret", "stuff_list", "thickness_at_crest", "thickness_at_edge_treble", "thickness_to_plane", "thickness_wedge_angle",),
    "setup_markers": ("drawing_setup_markers", "limit_tolerance_outline", "marker_offset", "marker_position", "marker_side_depth", "markers_diameter", "markers_double", "markers_frets", "markers_side_diameter", "stuff_list",),
    "setup_mould": ("body_length", "body_mould_half_width", "body_mould_length", "body_mould_thickness", "body_width", "drawing_mould", "limit_tolerance_outline", "stuff_list",),
    "setup_neck_blank": ("carve_wood", "drawing_setup_neck_blank", "limit_rip_kerf", "limit_tolerance_height", "plank_choice", "plank_length", "plank_thickness", "plank_width", "stuff_list",),
    "setup_neck_carve": ("carve_flat_back", "carve_heel_cap", "carve_heel_width", "carve_lines", "carve_stations", "drawing_setup_neck_carve", "limit_tolerance_height", "stuff_list",),
    "setup_neck_head": ("drawing_setup_neck_head", "head_hole", "head_posts_x", "head_posts_y", "head_reach", "head_roller_depth", "head_slot_ramp", "head_slot_room", "head_slot_width", "head_slots_apart", "head_thickness", "limit_sideways_bend", "limit_tolerance_height", "limit_tolerance_outline", "stuff_list",),
    "setup_neck_joint": ("body_neck_block", "body_neck_block_width", "heel_wedge", "limit_tolerance_angle", "limit_tolerance_height", "limit_tolerance_outline", "neck_angle_face", "neck_angle_target", "neck_heel_depth", "stuff_list",),
    "setup_neck_rod": ("carve_rod_pocket_width", "drawing_setup_neck_rod", "limit_tolerance_height", "limit_tolerance_outline", "neck_rod_depth", "neck_rod_width", "neck_section_under_channel", "rod_corner", "rod_end", "rod_start", "rod_under_head", "stuff_list",),
    "setup_neck_scarf": ("drawing_setup_neck_scarf", "head_angle", "head_blank", "head_scarf_length", "limit_tolerance_angle", "limit_tolerance_outline", "neck_heel_depth", "plank_shaft", "stuff_list",),
    "setup_neck_set": ("bridge_thickness", "drawing_neck_set", "heel_wedge", "heel_wedge_to_take", "heights_body_rise", "limit_tolerance_height", "limit_tolerance_outline", "neck_angle_face", "neck_angle_target", "neck_heel_depth", "neck_set_exposed_mean", "neck_set_run_mean", "neck_set_straightedge", "neck_set_straightedge_on_board", "neck_set_straightedge_over_top", "neck_set_tongue_gap", "neck_straightedge", "saddle_exposed", "stuff_list",),
    "setup_nut_slots": ("board_nut_length", "crown_height", "drawing_setup_nut", "limit_nut_slot_room", "limit_slot_position", "limit_tolerance_outline", "limit_zero_fret_drop", "nut_slot_blank", "nut_slot_depth", "nut_slot_over_board", "nut_slot_over_first", "nut_slot_width", "nut_spacing", "string_spread_along_nut", "stuff_list",),
    "setup_owner_air": ("across_unheld", "board_wood", "dome_across", "dome_brace_height", "dome_brace_spacing", "dome_brace_width", "dome_rise_dry", "dome_rise_dry_least", "dome_rise_made", "dome_rise_wet", "dome_rise_wet_least", "limit_gluing_humidity", "limit_owner_humidity_least", "limit_owner_humidity_most", "sprout_least", "sprout_most", "stuff_list", "swell_moisture_dry", "swell_moisture_made", "swell_moisture_wet", "swell_step_dry", "swell_width_dry_least", "swell_width_dry_most", "swell_width_wet_least", "swell_width_wet_most", "top_brace_wood", "top_wood",),
    "setup_relief": ("action_fret", "back_bow_least", "back_bow_most", "board_modulus", "drawing_heights", "height_over_crown", "height_saddle_share", "heights_relief", "limit_modulus_least", "limit_modulus_most", "limit_relief_least", "limit_relief_most", "limit_tolerance_height", "neck_modulus", "relief_predicted_least", "relief_predicted_most", "relief_rod_moment_least", "relief_rod_moment_most", "string_pull_said",),
    "setup_saddle": ("bridge_break_angle", "drawing_setup_saddle", "intonation_file_to", "limit_tolerance_outline", "neck_set_exposed", "saddle_blank_height", "saddle_length", "saddle_off_line", "saddle_set_back", "saddle_slot_depth", "saddle_tall", "saddle_thickness", "stuff_list",),
    "setup_saddle_slot": ("bridge_hold_across", "bridge_hold_behind", "bridge_hold_below", "bridge_hold_second", "bridge_hold_step", "bridge_pin_diameter", "bridge_under_slot", "drawing_setup_bridge", "limit_tolerance_height", "limit_tolerance_outline", "limit_under_saddle_slot", "saddle_angle", "saddle_end_bass", "saddle_end_treble", "saddle_length", "saddle_slot_depth", "saddle_thickness", "stuff_list",),
    "setup_sides": ("body_side_wood", "body_tightest_bend", "body_wall", "drawing_setup_side", "limit_tolerance_height", "limit_tolerance_outline", "side_blank_length", "side_blank_width", "side_length", "side_length_middle", "side_stations", "stuff_list",),
    "setup_slot": ("drawing_setup_slot", "fret_position", "limit_slot_position", "limit_tolerance_fit", "limit_tolerance_height", "limit_under_slot", "saw_kerf", "saw_main", "slot_depth_setting", "slot_left_least", "slot_need", "station_middle_fret", "stop_over_cradle", "stop_thinnest_fret", "stuff_list", "wire_name", "wire_tang_depth", "wire_tang_thickness",),
    "setup_strings": ("bridge_torque", "limit_torque_most", "string_elongation", "string_pull", "string_pull_said", "string_pull_total", "string_reserve", "string_weight", "strings_a4", "strings_core", "strings_frequency", "strings_gauges", "strings_plain", "strings_wrap",),
    "setup_taper": ("board_half_taper_angle", "board_taper_angle", "board_width_at_tail", "drawing_setup_taper", "feed_agreeing_edge", "feed_other_edge", "jig_taper", "limit_tolerance_height", "limit_tolerance_width", "nut_width", "stuff_list", "taper_centre_nut", "taper_centre_tail", "taper_edge_nut", "taper_edge_tail", "taper_half_width_nut", "taper_half_width_tail",),
    "setup_template": ("card_proof_octave", "card_proof_pin", "drawing_index_template", "jig_slots", "limit_slot_position", "limit_tolerance_height", "shop_laser_kerf", "shop_laser_kerf_in", "shop_pin_offset", "shop_template_pin", "station_middle_fret", "stuff_list", "template_matches", "template_notch_width", "template_pin_first", "template_pin_last",),
    "setup_top_under_strings": ("drawing_top_modes", "mode_air_lower", "mode_air_upper", "mode_list", "pulled_action", "pulled_rise", "pulled_rise_within", "pulled_rise_x", "pulled_said", "pulled_sink", "pulled_sink_within", "pulled_sink_x", "pulled_strain_brace", "pulled_strain_top", "pulled_strained_brace", "pulled_turn", "pulled_turn_crept_least", "pulled_turn_crept_most", "pulled_turn_damp", "pulled_turn_dry", "pulled_turn_least", "pulled_turn_most", "pulled_turn_supported", "pulled_turn_within", "top_brace_wood", "top_wood",),
    "setup_voice_top": ("drawing_setup_voice", "mode_list", "pulled_said", "pulled_turn", "pulled_turn_within", "shaving_list", "shaving_step", "stuff_list",),
    "setup_wire": ("drawing_setup_wire", "limit_bead_bite_caution", "limit_fit_loosest", "limit_fit_tightest", "limit_tolerance_fit", "limit_tolerance_height", "limit_tolerance_radius", "stuff_list", "wire_bead_thickness", "wire_bend_radius", "wire_crown_height", "wire_crown_width", "wire_cut", "wire_fits", "wire_line", "wire_name", "wire_nip_back", "wire_on_hand", "wire_tang_depth", "wire_tang_thickness", "wire_total",),
}
"""What each page shows, read off its code: edges of the graph."""

if TYPE_CHECKING:
    from gramil.description.body.records import BraceAsked, RingAsked
    from gramil.description.neck.head_outline import HeadCurve
    from gramil.description.records import Blank, Block, Cutter, IndexTemplate, Jig, KeptPiece, Saw, Station, Stuff, Wire
    from gramil.description.wood.air_values import WoodState
    from gramil.description.wood.timbers import Push, TimberKnown, Tried
    from gramil.drawings.heights import Turned
    from gramil.drawings.index_template import Notches, Rail
    from gramil.drawings.kerf import Machine
    from gramil.drawings.marks import Drawing, Polyline
    from gramil.drawings.neck import Leaning
    from gramil.drawings.neck_plank import LeaningHead
    from gramil.drawings.pen import View
    from gramil.drawings.section import Across
    from gramil.drawings.setup_sections import Sawn
    from gramil.faults import Fault
    from gramil.findings.finding import Finding
    from gramil.layers import LayerInk
    from gramil.parts.body_records import Billet, BodyBlock, Bout, Brace, Crossing, Feature, Holder, PlateShape, Ring, Shell, SideStation, Spot, Stick, Zeros
    from gramil.parts.cards import ArchCard, DepthCard, GapCard
    from gramil.parts.edge_records import Channel, Cut, Edge, EdgeLines, Strip, Tilt
    from gramil.parts.hands import Handed
    from gramil.parts.records import BlankChoice, BlockChoice, CarveLine, CarveShape, CarveStation, LedgeChoice, NeckPiece, NeckYield, PieceOnStock, Run, SlotOption, TemplateMatch, WireFit
    from gramil.parts.relief import PulledNeck
    from gramil.physics.compensation import Freedom, SetBacks
    from gramil.physics.layered_beam import Layers
    from gramil.physics.plates.bar import Bar, Gap
    from gramil.physics.plates.block import Block as BlockBlock
    from gramil.physics.plates.plate import Plate
    from gramil.physics.plates.timber import Timber
    from gramil.physics.stopped_string import StringPaths, StringStiffness
    from gramil.physics.two_mass import TwoMass
    from gramil.quantities import Celsius, Cents, Count, Gram, Hertz, MPa, Mm, Mm2, Mm3, Mm4, Newton, NewtonM, NewtonMm, PerMm, PerMm2, Percent, Radians, Ratio
    from gramil.reference import Members, Rows
    from gramil.setups.setup import BigFigure, Setup, Table
    from gramil.shapes.crown import Crown
    from gramil.shapes.dome import Dome
    from gramil.shapes.outline import Outline
    from gramil.shapes.profile import Profile
    from gramil.shapes.quadrilateral import Quadrilateral
    from gramil.shapes.strip_section import Moments
    from gramil.shapes.tapered_bar import TaperedBar
    from gramil.shapes.unrolled import UnrolledSide
    from gramil.top.braced import Attempt, Braced, Pull, Solved
    from gramil.top.derivatives import Changes
    from gramil.top.mode import Mode
    from gramil.top.modes import ModePicture, NearPair
    from gramil.top.pushing import PushTold
    from gramil.top.shaving import Shaving
    from gramil.top.tapped import TriedWood
    from typing import Literal
    from gramil.reference import of
    from gramil.drawings import board as drawings_board
    from gramil.drawings import body as drawings_body
    from gramil.drawings import bracing as drawings_bracing
    from gramil.drawings import bridge as drawings_bridge
    from gramil.drawings import carve as drawings_carve
    from gramil.drawings import face_plan as drawings_face_plan
    from gramil.drawings import gauges as drawings_gauges
    from gramil.drawings import guitar as drawings_guitar
    from gramil.drawings import head as drawings_head
    from gramil.drawings import heights as drawings_heights
    from gramil.drawings import index_template as drawings_index_template
    from gramil.drawings import machines as drawings_machines
    from gramil.drawings import neck as drawings_neck
    from gramil.drawings import neck_plank as drawings_neck_plank
    from gramil.drawings import plan as drawings_plan
    from gramil.drawings import section as drawings_section
    from gramil.drawings import setup_braces as drawings_setup_braces
    from gramil.drawings import setup_bridge as drawings_setup_bridge
    from gramil.drawings import setup_details as drawings_setup_details
    from gramil.drawings import setup_edges as drawings_setup_edges
    from gramil.drawings import setup_plans as drawings_setup_plans
    from gramil.drawings import setup_saddle as drawings_setup_saddle
    from gramil.drawings import setup_sections as drawings_setup_sections
    from gramil.drawings import setup_side as drawings_setup_side
    from gramil.drawings import string_cards as drawings_string_cards
    from gramil.drawings import whole as drawings_whole
    from gramil.findings import on_air as findings_on_air
    from gramil.findings import on_board as findings_on_board
    from gramil.findings import on_body as findings_on_body
    from gramil.findings import on_braces as findings_on_braces
    from gramil.findings import on_bridge as findings_on_bridge
    from gramil.findings import on_carve as findings_on_carve
    from gramil.findings import on_edges as findings_on_edges
    from gramil.findings import on_heights as findings_on_heights
    from gramil.findings import on_intonation as findings_on_intonation
    from gramil.findings import on_neck as findings_on_neck
    from gramil.findings import on_permits as findings_on_permits
    from gramil.findings import on_slots as findings_on_slots
    from gramil.findings import on_strings as findings_on_strings
    from gramil.findings import on_tension as findings_on_tension
    from gramil.findings import on_wire as findings_on_wire
    from gramil.parts import arch as part_arch
    from gramil.parts import back_bow as part_back_bow
    from gramil.parts import binding as part_binding
    from gramil.parts import binding_strips as part_binding_strips
    from gramil.parts import blank as part_blank
    from gramil.parts import block as part_block
    from gramil.parts import board as part_board
    from gramil.parts import body as part_body
    from gramil.parts import brace_room as part_brace_room
    from gramil.parts import brace_stock as part_brace_stock
    from gramil.parts import braces as part_braces
    from gramil.parts import bridge as part_bridge
    from gramil.parts import bridge_plate as part_bridge_plate
    from gramil.parts import cards as part_cards
    from gramil.parts import channels as part_channels
    from gramil.parts import dome_year as part_dome_year
    from gramil.parts import features as part_features
    from gramil.parts import hands as part_hands
    from gramil.parts import head as part_head
    from gramil.parts import heights as part_heights
    from gramil.parts import intonation as part_intonation
    from gramil.parts import lean as part_lean
    from gramil.parts import markers as part_markers
    from gramil.parts import movement as part_movement
    from gramil.parts import neck_blank as part_neck_blank
    from gramil.parts import neck_carve as part_neck_carve
    from gramil.parts import neck_section as part_neck_section
    from gramil.parts import neck_set as part_neck_set
    from gramil.parts import nut_slots as part_nut_slots
    from gramil.parts import pairs as part_pairs
    from gramil.parts import relief as part_relief
    from gramil.parts import rod_channel as part_rod_channel
    from gramil.parts import saddle as part_saddle
    from gramil.parts import saw as part_saw
    from gramil.parts import scale as part_scale
    from gramil.parts import section as part_section
    from gramil.parts import sides as part_sides
    from gramil.parts import slot_options as part_slot_options
    from gramil.parts import slots as part_slots
    from gramil.parts import soundhole as part_soundhole
    from gramil.parts import string_lines as part_string_lines
    from gramil.parts import template as part_template
    from gramil.parts import tension as part_tension
    from gramil.parts import thickness as part_thickness
    from gramil.parts import top_across as part_top_across
    from gramil.parts import wire as part_wire
    from gramil.setups import arching as setups_arching
    from gramil.setups import board_binding as setups_board_binding
    from gramil.setups import body_binding as setups_body_binding
    from gramil.setups import body_work as setups_body_work
    from gramil.setups import bridging as setups_bridging
    from gramil.setups import edging as setups_edging
    from gramil.setups import fretting as setups_fretting
    from gramil.setups import jig as setups_jig
    from gramil.setups import neck_carving as setups_neck_carving
    from gramil.setups import neck_joint as setups_neck_joint
    from gramil.setups import neck_set as setups_neck_set
    from gramil.setups import owner as setups_owner
    from gramil.setups import preparing as setups_preparing
    from gramil.setups import slotting as setups_slotting
    from gramil.setups import station as setups_station
    from gramil.setups import stop as setups_stop
    from gramil.setups import surfacing as setups_surfacing
    from gramil.setups import taper as setups_taper
    from gramil.top import back as top_back
    from gramil.top import model as top_model
    from gramil.top import modes as top_modes
    from gramil.top import pictures as top_pictures
    from gramil.top import pull as top_pull
    from gramil.top import pushing as top_pushing
    from gramil.top import shaving as top_shaving
    from gramil.top import sheets as top_sheets
    from gramil.top import verdicts as top_verdicts
    from gramil.top import woods as top_woods

    class WoodStateRef(Ref[WoodState]):
        name: Ref[str]
        wood: Ref[str]
        part: Ref[str]
        instrument: Ref[str]
        place: Ref[str]
        moisture_least: Ref[Percent]
        moisture_likely: Ref[Percent]
        moisture_most: Ref[Percent]
        when: Ref[str]

    class StationRef(Ref[Station]):
        fret: Ref[Ratio]
        beyond: Ref[Mm]

    class OutlineRef(Ref[Outline]):
        points: Members[Ref[Any], Any]
        corners: Members[Ref[int], int]
        length: Ref[Mm]
        width: Ref[Mm]
        perimeter: Ref[Mm]

    class BraceAskedRef(Ref[BraceAsked]):
        name: Ref[str]
        plate: Ref[str]
        held_to: Ref[str]
        start: Ref[Any]
        stop: Ref[Any]
        start_at: Ref[str]
        stop_at: Ref[str]
        width: Ref[Mm]
        height: Ref[Mm]
        ends: Ref[str]
        end_height: Ref[Mm]
        end_length: Ref[Mm]
        wood: Ref[str]
        crosses: Members[Ref[str], str]
        twin: Ref[str]

    class HeadCurveRef(Ref[HeadCurve]):
        points: Members[Ref[Any], Any]
        corners: Members[Ref[int], int]

    class RingAskedRef(Ref[RingAsked]):
        name: Ref[str]
        inner: Ref[Mm]
        width: Ref[Mm]
        depth: Ref[Mm]

    class BlankRef(Ref[Blank]):
        name: Ref[str]
        wood: Ref[str]
        length: Ref[Mm]
        width: Ref[Mm]
        thickness: Ref[Mm]
        count: Ref[Count]

    class BlockRef(Ref[Block]):
        name: Ref[str]
        curvature: Ref[PerMm]

    class CutterRef(Ref[Cutter]):
        name: Ref[str]
        diameter: Ref[Mm]
        bearings: Members[Ref[Mm], Mm]

    class JigRef(Ref[Jig]):
        name: Ref[str]
        purpose: Ref[str]
        constant: Ref[Mm]
        checked: Ref[str]

    class KeptPieceRef(Ref[KeptPiece]):
        name: Ref[str]
        wood: Ref[str]
        length: Ref[Mm]
        width: Ref[Mm]
        thickness: Ref[Mm]
        part: Ref[str]
        kept: Ref[bool]
        whole: Ref[bool]

    class LayerInkRef(Ref[LayerInk]):
        name: Ref[str]
        colour: Ref[str]
        weight: Ref[Mm]

    class SawRef(Ref[Saw]):
        name: Ref[str]
        kerf: Ref[Mm]
        cuts: Ref[str]
        rides_arch: Ref[bool]
        what: Ref[str]

    class IndexTemplateRef(Ref[IndexTemplate]):
        name: Ref[str]
        scale: Ref[Mm]
        frets: Ref[Count]
        pin: Ref[Mm]

    class WireRef(Ref[Wire]):
        name: Ref[str]
        crown_width: Ref[Mm]
        crown_height: Ref[Mm]
        tang_thickness: Ref[Mm]
        bead_thickness: Ref[Mm]
        tang_depth: Ref[Mm]
        on_hand: Ref[Mm]

    class StuffRef(Ref[Stuff]):
        name: Ref[str]
        wood: Ref[str]
        dust: Ref[str]
        permit: Ref[str]
        standing: Ref[str]
        doubt: Ref[str]

    class TimberKnownRef(Ref[TimberKnown]):
        timber: TimberRef
        spread: Ref[Ratio]
        measured: Ref[bool]
        told: Members[Ref[str], str]
        moisture: Ref[Percent]

    class PushRef(Ref[Push]):
        name: Ref[str]
        force: Ref[Newton]
        given: Ref[Mm]
        gauge: Ref[Mm]

    class TriedRef(Ref[Tried]):
        name: Ref[str]
        part: Ref[str]
        like: TimberKnownRef
        group: Ref[str]
        length: Ref[Mm]
        width: Ref[Mm]
        thickness: Ref[Mm]
        mass: Ref[Gram]
        moisture: Ref[Percent]
        along: Ref[Hertz]
        across: Ref[Hertz]
        twist: Ref[Hertz]
        span: Ref[Mm]
        force: Ref[Newton]
        given: Ref[Mm]

    class DrawingRef(Ref[Drawing]):
        name: Ref[str]
        title: Ref[str]
        seen_from: Ref[Literal['the face', 'the underside', 'the inside', 'the side', 'the end', 'either side']]
        marks: Members[Ref[Any], Any]
        stretch: Ref[float]
        scale: Ref[float]
        kerf: Ref[Any]
        told_at: Ref[Any]

    class TurnedRef(Ref[Turned]):
        join: Ref[Mm]
        board: Ref[Mm]
        angle: Ref[Radians]

    class RailRef(Ref[Rail]):
        head: Ref[Mm]
        tail: Ref[Mm]
        front: Ref[Mm]
        back: Ref[Mm]

    class NotchesRef(Ref[Notches]):
        centres: Members[Ref[Mm], Mm]
        width: Ref[Mm]
        depth: Ref[Mm]

    class MachineRef(Ref[Machine]):
        kerf: Ref[Mm]
        allowed_in: Ref[str]
        figure: Ref[Any]

    class LeaningRef(Ref[Leaning]):
        start: Ref[Any]
        angle: Ref[Radians]
        length: Ref[Mm]
        thickness: Ref[Mm]

    class LeaningHeadRef(Ref[LeaningHead]):
        start: Ref[Any]
        angle: Ref[Radians]
        length: Ref[Mm]
        wood: Ref[Mm]

    class AcrossRef(Ref[Across]):
        fret: Ref[int]
        half_width: Ref[Mm]
        half_core: Ref[Mm]
        crest: Ref[Mm]
        face: Members[Ref[Any], Any]
        bottom: Members[Ref[Any], Any]
        binding: Members[Ref[Any], Any]

    class ViewRef(Ref[View]):
        origin: Ref[Any]
        across: Ref[float]
        up: Ref[float]

    class PolylineRef(Ref[Polyline]):
        points: Members[Ref[Any], Any]
        layer: Ref[str]
        closed: Ref[bool]
        hatch: Ref[Literal['', 'along the grain', 'across the grain', 'metal', 'bone', 'void', 'left clear']]

    class SawnRef(Ref[Sawn]):
        face: Members[Ref[Any], Any]
        bottom: Members[Ref[Any], Any]
        under: Ref[Mm]
        finished: Members[Ref[Any], Any]

    class FindingRef(Ref[Finding]):
        name: Ref[str]
        severity: Ref[Literal['stop', 'caution', 'note', 'fine', 'not judged']]
        figure: Ref[Any]
        value: Ref[float]
        limit: Ref[Any]
        says: Ref[Any]
        remedy: Ref[Any]

    class CrownRef(Ref[Crown]):
        curvature_start: Ref[PerMm]
        curvature_end: Ref[PerMm]
        length: Ref[Mm]

    class LayersRef(Ref[Layers]):
        modulus: Ref[Any]
        area: Ref[Any]
        centroid: Ref[Any]
        inertia: Ref[Any]

    class LedgeChoiceRef(Ref[LedgeChoice]):
        name: Ref[str]
        diameter: Ref[Mm]
        bearing: Ref[Mm]
        ledge: Ref[Mm]
        proud: Ref[Mm]

    class StripRef(Ref[Strip]):
        name: Ref[str]
        count: Ref[Count]
        length: Ref[Mm]
        height: Ref[Mm]
        thickness: Ref[Mm]
        wood: Ref[str]
        bend: Ref[Ratio]
        material: Ref[str]
        is_binding: Ref[bool]
        plastic: Ref[bool]
        bends_as_wood: Ref[bool]

    class BlankChoiceRef(Ref[BlankChoice]):
        name: Ref[str]
        wood: Ref[str]
        length_over: Ref[Mm]
        width_over: Ref[Mm]
        thickness_over: Ref[Mm]
        waste: Ref[Mm2]

    class BlockChoiceRef(Ref[BlockChoice]):
        name: Ref[str]
        radius: Ref[Mm]
        misfit: Ref[Mm]

    class QuadrilateralRef(Ref[Quadrilateral]):
        start_lower_x: Ref[Mm]
        start_lower_y: Ref[Mm]
        start_upper_x: Ref[Mm]
        start_upper_y: Ref[Mm]
        end_upper_x: Ref[Mm]
        end_upper_y: Ref[Mm]
        end_lower_x: Ref[Mm]
        end_lower_y: Ref[Mm]
        corners: Ref[Any]
        length: Ref[Mm]
        width: Ref[Mm]

    class ZerosRef(Ref[Zeros]):
        join: Ref[float]
        tail: Ref[float]
        saddle: Ref[float]
        soundhole: Ref[float]
        body: Ref[float]

    class BoutRef(Ref[Bout]):
        name: Ref[str]
        kind: Ref[str]
        x: Ref[Mm]
        width: Ref[Mm]
        along: Ref[Mm]
        radius: Ref[Mm]

    class UnrolledSideRef(Ref[UnrolledSide]):
        outline: OutlineRef
        depth_start: Ref[Mm]
        depth_end: Ref[Mm]
        upper: DomeRef
        lower: DomeRef
        length: Ref[Mm]

    class ShellRef(Ref[Shell]):
        side: UnrolledSideRef
        lined: OutlineRef
        bare: OutlineRef

    class BodyBlockRef(Ref[BodyBlock]):
        name: Ref[str]
        start_x: Ref[Mm]
        end_x: Ref[Mm]
        half_width: Ref[Mm]
        depth: Ref[Mm]
        volume: Ref[Mm3]
        corners: Ref[Any]

    class StickRef(Ref[Stick]):
        name: Ref[str]
        wood: Ref[str]
        length: Ref[Mm]
        width: Ref[Mm]
        height: Ref[Mm]

    class BilletRef(Ref[Billet]):
        name: Ref[str]
        wood: Ref[str]
        sticks: Ref[Count]
        left: Ref[Mm]

    class BraceRef(Ref[Brace]):
        name: Ref[str]
        plate: Ref[str]
        held_to: Ref[str]
        wood: Ref[str]
        ends: Ref[str]
        start_x: Ref[Mm]
        start_y: Ref[Mm]
        stop_x: Ref[Mm]
        stop_y: Ref[Mm]
        length: Ref[Mm]
        width: Ref[Mm]
        height: Ref[Mm]
        end_height: Ref[Mm]
        end_length: Ref[Mm]
        sagitta: Ref[Mm]
        radius: Ref[Mm]
        nearest: Ref[Mm]
        angle: Ref[Radians]
        footprint: Members[Ref[Any], Any]
        start: Ref[Any]
        stop: Ref[Any]

    class CrossingRef(Ref[Crossing]):
        name: Ref[str]
        over: Ref[str]
        under: Ref[str]
        x: Ref[Mm]
        y: Ref[Mm]
        angle: Ref[Radians]
        depth_over: Ref[Mm]
        depth_under: Ref[Mm]
        width_over: Ref[Mm]
        width_under: Ref[Mm]
        along_over: Ref[Mm]
        along_under: Ref[Mm]

    class SpotRef(Ref[Spot]):
        x: Ref[Mm]
        y: Ref[Mm]
        point: Ref[Any]

    class PlateShapeRef(Ref[PlateShape]):
        name: Ref[str]
        front_x: Ref[Mm]
        back_x: Ref[Mm]
        front_half: Ref[Mm]
        back_half: Ref[Mm]
        thickness: Ref[Mm]
        slant: Ref[Ratio]
        corners: Ref[Any]

    class ArchCardRef(Ref[ArchCard]):
        name: Ref[str]
        position: Ref[Mm]
        radius: Ref[Mm]
        half_width: Ref[Mm]
        fall: Ref[Mm]
        reach: Ref[Mm]
        half_angle: Ref[Radians]

    class DepthCardRef(Ref[DepthCard]):
        name: Ref[str]
        depth: Ref[Mm]

    class GapCardRef(Ref[GapCard]):
        name: Ref[str]
        thickness: Ref[Mm]

    class EdgeRef(Ref[Edge]):
        name: Ref[str]
        thickness: Ref[Mm]
        height: Ref[Mm]
        purfling: Ref[Mm]
        purfling_depth: Ref[Mm]
        wood: Ref[str]
        plate: Ref[Mm]
        material: Ref[str]
        reach: Ref[Mm]
        cover: Ref[Mm]

    class EdgeLinesRef(Ref[EdgeLines]):
        name: Ref[str]
        bound: OutlineRef
        purfled: OutlineRef

    class ChannelRef(Ref[Channel]):
        name: Ref[str]
        behind: Ref[Mm]
        lining: Ref[Mm]
        glued: Ref[Mm]
        past_linings: Ref[Mm]
        under_purfling: Ref[Mm]
        cover: Ref[Mm]

    class TiltRef(Ref[Tilt]):
        name: Ref[str]
        angle: Ref[Radians]
        along: Ref[Mm]
        lean: Ref[Mm]
        floor: Ref[Mm]

    class CutRef(Ref[Cut]):
        name: Ref[str]
        inset: Ref[Mm]
        depth: Ref[Mm]
        step: Ref[Mm]
        choice: Ref[str]
        diameter: Ref[Mm]
        bearing: Ref[Mm]
        ledge: Ref[Mm]
        proud: Ref[Mm]

    class FeatureRef(Ref[Feature]):
        name: Ref[str]
        held_to: Ref[str]
        along: Ref[Mm]

    class HandedRef(Ref[Handed]):
        hand: Ref[str]

    class RunRef(Ref[Run]):
        points: Members[Ref[Any], Any]

    class StringPathsRef(Ref[StringPaths]):
        nut_x: Ref[Any]
        nut_height: Ref[Any]
        saddle_x: Ref[Any]
        saddle_height: Ref[Any]
        stop_x: Ref[Any]
        stop_height: Ref[Any]
        ratio: Ref[Any]
        finger_offset: Ref[Any]
        finger_depth: Ref[Any]
        end_slope: Ref[Any]

    class StringStiffnessRef(Ref[StringStiffness]):
        stretch: Ref[Any]
        bending_radius: Ref[Any]
        at_length: Ref[Any]

    class SetBacksRef(Ref[SetBacks]):
        nut: Ref[Any]
        saddle: Ref[Any]
        cents: Ref[Any]
        rms: Ref[Any]
        rms_of_all: Ref[float]

    class FreedomRef(Ref[Freedom]):
        shape: Ref[Any]

    class NeckPieceRef(Ref[NeckPiece]):
        name: Ref[str]
        length: Ref[Mm]
        width: Ref[Mm]
        thickness: Ref[Mm]

    class NeckYieldRef(Ref[NeckYield]):
        name: Ref[str]
        necks: Ref[Count]
        length: Ref[Mm]
        width: Ref[Mm]
        thickness: Ref[Mm]
        thickness_over: Ref[Mm]
        used: Ref[Ratio]

    class PieceOnStockRef(Ref[PieceOnStock]):
        name: Ref[str]
        along: Ref[Mm]
        across: Ref[Mm]
        length: Ref[Mm]
        width: Ref[Mm]

    class CarveShapeRef(Ref[CarveShape]):
        first: ProfileRef
        tenth: ProfileRef

    class TaperedBarRef(Ref[TaperedBar]):
        places: Members[Ref[Mm], Mm]
        profiles: Members[ProfileRef, Profile]

    class CarveStationRef(Ref[CarveStation]):
        name: Ref[str]
        fret: Ref[Ratio]
        position: Ref[Mm]
        width: Ref[Mm]
        depth: Ref[Mm]
        whole: Ref[Mm]
        exponent: Ref[Ratio]
        blend: Ref[Ratio]
        mix: Ref[Ratio]
        profile: ProfileRef

    class CarveLineRef(Ref[CarveLine]):
        name: Ref[str]
        station: Ref[str]
        number: Ref[Count]
        centre: Ref[Mm]
        joint: Ref[Mm]

    class MomentsRef(Ref[Moments]):
        area: Ref[Any]
        first: Ref[Any]
        second: Ref[Any]
        about_centroid: Ref[Any]

    class PulledNeckRef(Ref[PulledNeck]):
        stations: Ref[Any]
        stiffest: Ref[Any]
        softest: Ref[Any]
        lever: Ref[Any]
        first: Ref[Mm]
        far_end: Ref[Mm]

    class SideStationRef(Ref[SideStation]):
        name: Ref[str]
        along: Ref[Mm]
        depth: Ref[Mm]
        radius: Ref[Mm]

    class SlotOptionRef(Ref[SlotOption]):
        name: Ref[str]
        bottom: Ref[str]
        cut: Ref[str]
        setting: Ref[Mm]
        measured_from: Ref[str]
        then: Ref[str]
        left_at_crest: Ref[Mm]
        left_at_end: Ref[Mm]
        pilot_at_end: Ref[Mm]
        stiffness_kept: Ref[Ratio]
        stiffness_kept_with_neck: Ref[Ratio]

    class RingRef(Ref[Ring]):
        name: Ref[str]
        inner: Ref[Mm]
        outer: Ref[Mm]
        depth: Ref[Mm]

    class TemplateMatchRef(Ref[TemplateMatch]):
        name: Ref[str]
        frets: Ref[Count]
        worst: Ref[Mm]
        serves: Ref[bool]

    class HolderRef(Ref[Holder]):
        name: Ref[str]
        share: Ref[Ratio]
        lean: Ref[Ratio]
        length: Ref[Mm]
        width: Ref[Mm]
        height: Ref[Mm]
        low: Ref[Mm]
        high: Ref[Mm]
        counts: Ref[Mm2]

    class WireFitRef(Ref[WireFit]):
        name: Ref[str]
        gap: Ref[Mm]
        bite: Ref[Mm]
        wedge_least: Ref[Mm]
        wedge_most: Ref[Mm]

    class SetupRef(Ref[Setup]):
        name: Ref[str]
        title: Ref[str]
        order: Ref[int]
        figures: Members[BigFigureRef, BigFigure]
        steps: Members[Ref[Any], Any]
        prove: Ref[Any]
        by: Members[Ref[str], str]
        tools: Members[Ref[Any], Any]
        drawing: Ref[Any]
        boxes: Members[Ref[Any], Any]
        tables: Members[TableRef, Table]
        closed: Ref[Any]
        box_near: Ref[Any]
        on: Members[Ref[Any], Any]
        instead: Members[Ref[str], str]
        notes: Members[Ref[Any], Any]
        texts: Members[Ref[Any], Any]

    class BarRef(Ref[Bar]):
        name: Ref[str]
        start: Ref[Any]
        stop: Ref[Any]
        width: Ref[float]
        crest: Members[Ref[Any], Any]
        wood: TimberRef
        side: Ref[int]
        gaps: Members[GapRef, Gap]
        cut: Ref[Literal['quarter', 'slab']]
        length: Ref[float]
        height: Ref[float]
        way: Ref[Any]
        left: Ref[Any]

    class ModeRef(Ref[Mode]):
        name: Ref[str]
        hertz: Ref[Hertz]
        within: Ref[Hertz]
        least: Ref[Hertz]
        most: Ref[Hertz]
        parts: Ref[int]

    class NearPairRef(Ref[NearPair]):
        name: Ref[str]
        one: Ref[str]
        other: Ref[str]
        hertz: Ref[Hertz]

    class TwoMassRef(Ref[TwoMass]):
        box: Ref[Hertz]
        closed: Ref[Hertz]
        lower: Ref[Hertz]
        upper: Ref[Hertz]

    class PushToldRef(Ref[PushTold]):
        name: Ref[str]
        given: Ref[Mm]
        solved: Ref[Mm]
        solved_within: Ref[Mm]
        least: Ref[Mm]
        most: Ref[Mm]
        factor: Ref[Ratio]
        factor_within: Ref[Ratio]
        turn: Ref[Radians]
        turn_within: Ref[Radians]

    class ShavingRef(Ref[Shaving]):
        name: Ref[str]
        turn: Ref[Radians]
        sink: Ref[Mm]
        rise: Ref[Mm]
        first: Ref[Hertz]
        second: Ref[Hertz]
        third: Ref[Hertz]
        room: Ref[Mm]
        place_x: Ref[Mm]
        place_y: Ref[Mm]
        wider_turn: Ref[Radians]
        wider_first: Ref[Hertz]
        aside_turn: Ref[Radians]
        aside_first: Ref[Hertz]
        turn_in_hundredths: Ref[Ratio]
        wider_turn_in_hundredths: Ref[Ratio]
        aside_turn_in_hundredths: Ref[Ratio]

    class TriedWoodRef(Ref[TriedWood]):
        name: Ref[str]
        known: TimberKnownRef
        along_within: Ref[Ratio]
        across_within: Ref[Ratio]
        twist_within: Ref[Ratio]
        carried: Ref[Ratio]
        shear_share: Ref[Ratio]
        faults: Members[FaultRef, Fault]

    class TimberRef(Ref[Timber]):
        longitudinal: Ref[float]
        radial: Ref[float]
        tangential: Ref[float]
        shear_lr: Ref[float]
        shear_lt: Ref[float]
        shear_rt: Ref[float]
        poisson_lr: Ref[float]
        poisson_lt: Ref[float]
        density: Ref[float]

    class DomeRef(Ref[Dome]):
        curvature: Ref[PerMm]
        apex_x: Ref[Mm]
        apex_y: Ref[Mm]

    class ProfileRef(Ref[Profile]):
        half_width: Ref[Mm]
        depth: Ref[Mm]
        exponent: Ref[Ratio]
        other_exponent: Ref[Ratio]
        mix: Ref[Ratio]
        area: Ref[Mm2]
        first_moment: Ref[Mm3]
        second_moment: Ref[Mm4]

    class BigFigureRef(Ref[BigFigure]):
        figure: Ref[Any]
        what: Ref[Any]
        tolerance: Ref[Any]
        measured_with: Ref[Any]

    class TableRef(Ref[Table]):
        title: Ref[Any]
        columns: Members[Ref[Any], Any]
        rows: Ref[Any]
        row_name: Ref[str]
        both_units: Ref[bool]
        numbered: Ref[bool]

    class GapRef(Ref[Gap]):
        along: Ref[float]
        width: Ref[float]
        low: Ref[float]
        high: Ref[float]
        glued: Ref[bool]

    class FaultRef(Ref[Fault]):
        line: Ref[Any]
        where: Ref[str]
        what: Ref[str]
        why: Ref[str]
        remedy: Ref[str]
        file: Ref[Any]

    air_humidity: Ref[Percent]
    air_known: Ref[bool]
    air_pieces: Members[WoodStateRef, WoodState]
    air_pieces_unknown: Members[Ref[str], str]
    air_place: Ref[str]
    air_read_at: Ref[str]
    air_temperature: Ref[Celsius]
    air_unknown_because: Ref[str]
    back_binding_height: Ref[Mm]
    back_binding_material: Ref[str]
    back_binding_purfling: Ref[Mm]
    back_binding_purfling_depth: Ref[Mm]
    back_binding_thickness: Ref[Mm]
    back_binding_wood: Ref[str]
    binding_material: Ref[str]
    binding_purfling: Ref[Mm]
    binding_tail: Ref[bool]
    binding_thickness: Ref[Mm]
    binding_wood: Ref[str]
    board_beyond_last_fret: Ref[Mm]
    board_curvature_end: Ref[PerMm]
    board_curvature_nut: Ref[PerMm]
    board_edge_nut_bass: Ref[Mm]
    board_edge_nut_treble: Ref[Mm]
    board_edge_tail_bass: Ref[Mm]
    board_edge_tail_treble: Ref[Mm]
    board_level_underside: Ref[bool]
    board_modulus: Ref[MPa]
    board_modulus_known: Ref[bool]
    board_movement_radial: Ref[float]
    board_movement_tangential: Ref[float]
    board_thickness: Ref[Mm]
    board_width: Ref[Mm]
    board_width_station: StationRef
    board_wood: Ref[str]
    body_alike: Ref[Mm]
    body_back_radius: Ref[Mm]
    body_back_thickness: Ref[Mm]
    body_beyond_join: Ref[Mm]
    body_clearance: Ref[Mm]
    body_depth_neck: Ref[Mm]
    body_depth_tail: Ref[Mm]
    body_layer: Ref[str]
    body_linings: Ref[Mm]
    body_linings_height: Ref[Mm]
    body_mould_wall: Ref[Mm]
    body_neck_block: Ref[Mm]
    body_neck_block_width: Ref[Mm]
    body_outlines: Members[OutlineRef, Outline]
    body_plate_allowance: Ref[Mm]
    body_side_allowance: Ref[Mm]
    body_side_over: Ref[Mm]
    body_side_wood: Ref[str]
    body_tail_block: Ref[Mm]
    body_tail_block_width: Ref[Mm]
    body_wall: Ref[Mm]
    braces_asked: Members[BraceAskedRef, BraceAsked]
    bridge_front: Ref[Mm]
    bridge_front_row: Ref[Literal['treble string', 'bass string']]
    bridge_hold: Ref[Literal['pins', 'tie block']]
    bridge_hold_behind: Ref[Mm]
    bridge_hold_below: Ref[Mm]
    bridge_hold_line: Ref[Literal['along the bridge', 'along the saddle']]
    bridge_hold_spread: Ref[Mm]
    bridge_length: Ref[Mm]
    bridge_pair: Ref[Mm]
    bridge_pair_by: Ref[Literal['centres', 'gap']]
    bridge_pin_diameter: Ref[Mm]
    bridge_plate_ahead: Ref[Mm]
    bridge_plate_behind: Ref[Mm]
    bridge_plate_lean: Ref[Radians]
    bridge_plate_length_back: Ref[Mm]
    bridge_plate_length_front: Ref[Mm]
    bridge_plate_thickness: Ref[Mm]
    bridge_plate_wood: Ref[str]
    bridge_rows: Ref[Literal['one', 'two', 'staggered']]
    bridge_rows_apart: Ref[Mm]
    bridge_spacing: Ref[Literal['equal centres', 'equal gaps']]
    bridge_spread: Ref[Mm]
    bridge_thickness: Ref[Mm]
    bridge_width: Ref[Mm]
    carve_blend_at_1: Ref[Ratio]
    carve_blend_at_10: Ref[Ratio]
    carve_blend_exponent: Ref[Ratio]
    carve_ears: Ref[bool]
    carve_exponent_at_1: Ref[Ratio]
    carve_exponent_at_10: Ref[Ratio]
    carve_facets: Ref[Count]
    carve_heel: Ref[Literal['stacked', 'solid']]
    carve_heel_cap: Ref[Mm]
    carve_heel_length: Ref[Mm]
    carve_heel_width: Ref[Mm]
    carve_rod_access: Ref[Literal['head', 'soundhole']]
    carve_rod_clear: Ref[Mm]
    carve_rod_length: Ref[Mm]
    carve_rod_pocket: Ref[Mm]
    carve_rod_pocket_width: Ref[Mm]
    carve_scarf: Ref[Literal['on the head', 'under the board', 'one piece']]
    carve_station_frets: Members[Ref[float], float]
    carve_tenon: Ref[Mm]
    carve_wood: Ref[str]
    head_angle: Ref[Radians]
    head_blank: Ref[Mm]
    head_curve: HeadCurveRef
    head_hole: Ref[Mm]
    head_layer: Ref[str]
    head_nut_thickness: Ref[Mm]
    head_post_height: Ref[Mm]
    head_posts_x: Rows
    head_posts_y: Rows
    head_slot_width: Ref[Mm]
    head_thickness: Ref[Mm]
    head_tuners: Ref[Literal['upright', 'across']]
    head_veneer: Ref[Mm]
    heights_action_bass: Ref[Mm]
    heights_action_treble: Ref[Mm]
    heights_body_rise: Ref[Mm]
    heights_dressing_loss: Ref[Mm]
    heights_nut_bass: Ref[Mm]
    heights_nut_over: Ref[Literal['fret 1', 'the zero line']]
    heights_nut_treble: Ref[Mm]
    heights_relief: Ref[Mm]
    instrument_handed: Ref[Literal['right', 'left']]
    instrument_name: Ref[str]
    instrument_units: Ref[Literal['mm', 'in']]
    intonation_file_to: Ref[Mm]
    intonation_finger_offset: Ref[Mm]
    intonation_from_fret: Ref[Count]
    intonation_nut: Ref[Literal['none', 'straight', 'per string']]
    intonation_nut_given: Rows
    intonation_pair: Ref[Literal['two break points', 'one break point']]
    intonation_saddle: Ref[Literal['straight', 'slanted', 'per string']]
    intonation_to_fret: Ref[Count]
    limit_action_bass_least: Ref[Mm]
    limit_action_bass_most: Ref[Mm]
    limit_action_treble_least: Ref[Mm]
    limit_action_treble_most: Ref[Mm]
    limit_air_share_least: Ref[Ratio]
    limit_air_share_most: Ref[Ratio]
    limit_back_bow: Ref[Mm]
    limit_bead_bite_caution: Ref[Mm]
    limit_bead_bite_stop: Ref[Mm]
    limit_bead_share_most: Ref[Ratio]
    limit_behind_channel: Ref[Mm]
    limit_bend_ratio: Ref[Ratio]
    limit_bend_ratio_least: Ref[Ratio]
    limit_beside_rod: Ref[Mm]
    limit_binding_cover: Ref[Mm]
    limit_binding_proud_least: Ref[Mm]
    limit_binding_proud_most: Ref[Mm]
    limit_binding_step: Ref[Mm]
    limit_block_misfit: Ref[Mm]
    limit_body_rise_least: Ref[Mm]
    limit_body_rise_most: Ref[Mm]
    limit_brace_room: Ref[Mm]
    limit_brace_to_hole: Ref[Mm]
    limit_break_angle_least: Ref[Radians]
    limit_break_angle_most: Ref[Radians]
    limit_break_angle_saddle: Ref[Radians]
    limit_break_angle_saddle_least: Ref[Radians]
    limit_breaking_reserve: Ref[Ratio]
    limit_breaking_reserve_least: Ref[Ratio]
    limit_bridge_width_share: Ref[Ratio]
    limit_carve_stations: Ref[Ratio]
    limit_cents_rms: Ref[Cents]
    limit_cents_worst: Ref[Cents]
    limit_channel_lean: Ref[Mm]
    limit_clearance_least: Ref[Mm]
    limit_clearance_most: Ref[Mm]
    limit_core_least: Ref[Mm]
    limit_core_share: Ref[Ratio]
    limit_crest_loss_least: Ref[Mm]
    limit_crest_loss_most: Ref[Mm]
    limit_crossing_room: Ref[Mm]
    limit_crown_least: Ref[Mm]
    limit_dome_change_kept_least: Ref[Ratio]
    limit_edge_margin: Ref[Mm]
    limit_edge_uneven: Ref[Mm]
    limit_exposed_least: Ref[Mm]
    limit_exposed_most: Ref[Mm]
    limit_exposed_stop_least: Ref[Mm]
    limit_exposed_stop_most: Ref[Mm]
    limit_fit_loosest: Ref[Mm]
    limit_fit_tightest: Ref[Mm]
    limit_gluing_humidity: Ref[Percent]
    limit_gluing_humidity_least: Ref[Percent]
    limit_gluing_humidity_most: Ref[Percent]
    limit_head_beside: Ref[Mm]
    limit_head_beyond: Ref[Mm]
    limit_heel_wedge: Ref[Mm]
    limit_hole_edge: Ref[Mm]
    limit_holes_apart: Ref[Mm]
    limit_lining_under: Ref[Mm]
    limit_modulus_least: Ref[Ratio]
    limit_modulus_most: Ref[Ratio]
    limit_neck_angle_least: Ref[Radians]
    limit_neck_angle_most: Ref[Radians]
    limit_nip_back: Ref[Mm]
    limit_nut_first_least: Ref[Mm]
    limit_nut_first_most: Ref[Mm]
    limit_nut_gain: Ref[Cents]
    limit_nut_slot_room: Ref[Mm]
    limit_nut_slot_share: Ref[Ratio]
    limit_over_rod: Ref[Mm]
    limit_over_top_least: Ref[Mm]
    limit_over_top_most: Ref[Mm]
    limit_owner_humidity_least: Ref[Percent]
    limit_owner_humidity_most: Ref[Percent]
    limit_owner_temperature: Ref[Celsius]
    limit_pair_least: Ref[Mm]
    limit_pair_most: Ref[Mm]
    limit_pilot_least: Ref[Mm]
    limit_pin_room: Ref[Mm]
    limit_pin_spacing: Ref[Ratio]
    limit_pin_spacing_least: Ref[Ratio]
    limit_pin_to_saddle: Ref[Mm]
    limit_plank_over: Ref[Mm]
    limit_plate_glued: Ref[Mm]
    limit_plate_glued_least: Ref[Mm]
    limit_plate_to_leg: Ref[Mm]
    limit_plate_under_pin: Ref[Mm]
    limit_pull_least: Ref[Newton]
    limit_pull_uneven: Ref[Ratio]
    limit_relief_least: Ref[Mm]
    limit_relief_most: Ref[Mm]
    limit_rip_kerf: Ref[Mm]
    limit_rod_blind: Ref[Mm]
    limit_rod_reach: Ref[Mm]
    limit_rod_short: Ref[Mm]
    limit_saddle_edge: Ref[Mm]
    limit_saddle_shows: Ref[Ratio]
    limit_side_between: Ref[Mm]
    limit_sideways_bend: Ref[Radians]
    limit_single_strings: Ref[Ratio]
    limit_slot_error_cents: Ref[Cents]
    limit_slot_position: Ref[Mm]
    limit_slot_room: Ref[Mm]
    limit_sprout: Ref[Mm]
    limit_string_error_cents: Ref[Cents]
    limit_string_hump: Ref[Mm]
    limit_string_to_pin: Ref[Mm]
    limit_string_to_post: Ref[Mm]
    limit_strip_over: Ref[Mm]
    limit_tolerance_angle: Ref[Radians]
    limit_tolerance_bridge: Ref[Mm]
    limit_tolerance_fit: Ref[Mm]
    limit_tolerance_height: Ref[Mm]
    limit_tolerance_outline: Ref[Mm]
    limit_tolerance_radius: Ref[Mm]
    limit_tolerance_width: Ref[Mm]
    limit_tongue_gap: Ref[Mm]
    limit_top_creep_least: Ref[Ratio]
    limit_top_creep_most: Ref[Ratio]
    limit_top_strain_most: Ref[Ratio]
    limit_top_turn_least: Ref[Radians]
    limit_top_turn_most: Ref[Radians]
    limit_torque_least: Ref[NewtonM]
    limit_torque_most: Ref[NewtonM]
    limit_under_purfling: Ref[Mm]
    limit_under_rod: Ref[Mm]
    limit_under_saddle_slot: Ref[Mm]
    limit_under_slot: Ref[Mm]
    limit_under_slot_least: Ref[Mm]
    limit_wedge_kept_least: Ref[Ratio]
    limit_wedge_kept_most: Ref[Ratio]
    limit_wing_off_leg: Ref[Mm]
    limit_wire_bend_ratio: Ref[Ratio]
    limit_wire_extra: Ref[Mm]
    limit_wire_spare: Ref[Ratio]
    limit_zero_fret_drop: Ref[Mm]
    markers_diameter: Ref[Mm]
    markers_double: Members[Ref[int], int]
    markers_face: Ref[bool]
    markers_frets: Members[Ref[int], int]
    markers_side_diameter: Ref[Mm]
    neck_bar_depth: Ref[Mm]
    neck_bar_modulus: Ref[MPa]
    neck_bar_width: Ref[Mm]
    neck_bars: Ref[Count]
    neck_depth_first: Ref[Mm]
    neck_depth_tenth: Ref[Mm]
    neck_heel_depth: Ref[Mm]
    neck_modulus: Ref[MPa]
    neck_modulus_known: Ref[bool]
    neck_rod: Ref[Literal['none', 'one way', 'two way']]
    neck_rod_depth: Ref[Mm]
    neck_rod_width: Ref[Mm]
    neck_straightedge: Ref[Mm]
    nut_behind: Ref[Mm]
    nut_pair: Ref[Mm]
    nut_pair_by: Ref[Literal['centres', 'gap']]
    nut_set_forward: Ref[Mm]
    nut_spacing: Ref[Literal['equal gaps', 'equal centres']]
    nut_spread: Ref[Mm]
    nut_width: Ref[Mm]
    rosette_asked: Members[RingAskedRef, RingAsked]
    saddle_beyond: Ref[Mm]
    saddle_exposed: Ref[Mm]
    saddle_set_back_given: Rows
    saddle_slot_depth: Ref[Mm]
    saddle_thickness: Ref[Mm]
    scale_bass: Ref[Mm]
    scale_cents: Rows
    scale_frets: Ref[Count]
    scale_join: Ref[Ratio]
    scale_sideways: Ref[Mm]
    scale_square_at: Ref[Ratio]
    scale_square_at_cents: Ref[Cents]
    scale_temperament: Ref[str]
    scale_treble: Ref[Mm]
    scale_zero_fret: Ref[bool]
    shop_allowance_length: Ref[Mm]
    shop_allowance_side: Ref[Mm]
    shop_blanks: Members[BlankRef, Blank]
    shop_blocks: Members[BlockRef, Block]
    shop_cutters: Members[CutterRef, Cutter]
    shop_is_default: Ref[bool]
    shop_jigs: Members[JigRef, Jig]
    shop_kept: Members[KeptPieceRef, KeptPiece]
    shop_laser_kerf: Ref[Mm]
    shop_laser_kerf_in: Ref[Literal['the drawing', 'the machine']]
    shop_layers: Members[LayerInkRef, LayerInk]
    shop_name: Ref[str]
    shop_paper: Ref[str]
    shop_pin_clearance: Ref[Mm]
    shop_pin_offset: Ref[Mm]
    shop_router_kerf: Ref[Mm]
    shop_router_kerf_in: Ref[Literal['the drawing', 'the machine']]
    shop_saws: Members[SawRef, Saw]
    shop_sheet_paper: Ref[str]
    shop_temperature: Ref[Literal['C', 'F']]
    shop_template_pin: Ref[Mm]
    shop_template_thickness: Ref[Mm]
    shop_templates: Members[IndexTemplateRef, IndexTemplate]
    shop_units: Ref[Literal['mm', 'in']]
    shop_wires: Members[WireRef, Wire]
    slots_bottom: Ref[Literal['straight', 'follows the arch']]
    slots_clearance: Ref[Mm]
    slots_crest_loss: Ref[Mm]
    slots_cut: Ref[Literal['before arching', 'after arching']]
    slots_saw: Ref[str]
    soundhole_diameter: Ref[Mm]
    soundhole_given: Ref[Mm]
    soundhole_held_to: Ref[Literal['body', 'join', 'tail', 'saddle']]
    strings_a4: Ref[Hertz]
    strings_bending: Rows
    strings_core: Ref[str]
    strings_cores: Rows
    strings_count: Ref[Count]
    strings_course: Rows
    strings_frequency: Rows
    strings_gauges: Rows
    strings_plain: Ref[str]
    strings_single: Ref[bool]
    strings_stretch: Rows
    strings_weights: Rows
    strings_wound: Rows
    strings_wrap: Ref[str]
    stuff_list: Members[StuffRef, Stuff]
    timber_back: TimberKnownRef
    timber_braces: TimberKnownRef
    timber_bridge: TimberKnownRef
    timber_bridge_plate: TimberKnownRef
    timber_pushes: Members[PushRef, Push]
    timber_top: TimberKnownRef
    timber_tried: Members[TriedRef, Tried]
    top_binding_height: Ref[Mm]
    top_binding_material: Ref[str]
    top_binding_purfling: Ref[Mm]
    top_binding_purfling_depth: Ref[Mm]
    top_binding_thickness: Ref[Mm]
    top_binding_wood: Ref[str]
    top_brace_height: Ref[Mm]
    top_brace_modulus: Ref[MPa]
    top_brace_spacing: Ref[Mm]
    top_brace_width: Ref[Mm]
    top_brace_wood: Ref[str]
    top_length: Ref[Mm]
    top_modulus_across: Ref[MPa]
    top_movement_radial: Ref[float]
    top_radius: Ref[Mm]
    top_rise: Ref[Mm]
    top_thickness: Ref[Mm]
    top_wood: Ref[str]
    wire_bead_thickness: Ref[Mm]
    wire_crown_height: Ref[Mm]
    wire_crown_width: Ref[Mm]
    wire_name: Ref[str]
    wire_on_hand: Ref[Mm]
    wire_tang_depth: Ref[Mm]
    wire_tang_thickness: Ref[Mm]
    work_back_strip: Ref[bool]
    work_end_pin: Ref[Literal['fitted', 'none']]
    work_finish: Ref[Literal['lacquer', 'shellac', 'oil']]
    work_head_mark: Ref[bool]
    work_heel_cap: Ref[bool]
    work_linings: Ref[Literal['bought', 'made here']]
    work_neck_joint: Ref[Literal['glued', 'bolted', 'dowelled', 'built on']]
    work_neck_set: Ref[Literal['after the finish', 'before the finish']]
    work_side_strips: Ref[Literal['between the linings', 'before the linings', 'none']]
    work_wood: Ref[Literal['new', 'settled']]

    # drawings/board.py
    piece_board: Members[Ref[Any], Any] = of(drawings_board.piece_board)
    piece_furniture: Members[Ref[Any], Any] = of(drawings_board.piece_furniture)
    piece_words: Members[Ref[Any], Any] = of(drawings_board.piece_words)
    drawing_board: DrawingRef = of(drawings_board.drawing_board)

    # drawings/body.py
    piece_body_outline: Members[Ref[Any], Any] = of(drawings_body.piece_body_outline)
    piece_binding_lines: Members[Ref[Any], Any] = of(drawings_body.piece_binding_lines)
    piece_soundhole: Members[Ref[Any], Any] = of(drawings_body.piece_soundhole)
    piece_bridge_on_body: Members[Ref[Any], Any] = of(drawings_body.piece_bridge_on_body)
    piece_saddle_on_body: Members[Ref[Any], Any] = of(drawings_body.piece_saddle_on_body)
    piece_braces_hidden: Members[Ref[Any], Any] = of(drawings_body.piece_braces_hidden)
    piece_body_blocks: Members[Ref[Any], Any] = of(drawings_body.piece_body_blocks)
    piece_body_sizes: Members[Ref[Any], Any] = of(drawings_body.piece_body_sizes)
    piece_face_plan: Members[Ref[Any], Any] = of(drawings_body.piece_face_plan)
    drawing_side: DrawingRef = of(drawings_body.drawing_side)
    piece_unrolled_words: Members[Ref[Any], Any] = of(drawings_body.piece_unrolled_words)
    drawing_mould: DrawingRef = of(drawings_body.drawing_mould)

    # drawings/bracing.py
    piece_plan_top: Members[Ref[Any], Any] = of(drawings_bracing.piece_plan_top)
    piece_plan_back: Members[Ref[Any], Any] = of(drawings_bracing.piece_plan_back)
    piece_face_numbers: Members[Ref[Any], Any] = of(drawings_bracing.piece_face_numbers)
    piece_list_top: Members[Ref[Any], Any] = of(drawings_bracing.piece_list_top)
    piece_list_back: Members[Ref[Any], Any] = of(drawings_bracing.piece_list_back)
    drawing_top_inside: DrawingRef = of(drawings_bracing.drawing_top_inside)
    drawing_back_inside: DrawingRef = of(drawings_bracing.drawing_back_inside)
    drawing_braces: DrawingRef = of(drawings_bracing.drawing_braces)

    # drawings/bridge.py
    piece_bridge: Members[Ref[Any], Any] = of(drawings_bridge.piece_bridge)
    piece_saddle_slot: Members[Ref[Any], Any] = of(drawings_bridge.piece_saddle_slot)
    piece_break_points: Members[Ref[Any], Any] = of(drawings_bridge.piece_break_points)
    piece_scale_ends: Members[Ref[Any], Any] = of(drawings_bridge.piece_scale_ends)
    piece_hold: Members[Ref[Any], Any] = of(drawings_bridge.piece_hold)
    piece_bridge_strings: Members[Ref[Any], Any] = of(drawings_bridge.piece_bridge_strings)
    piece_bridge_lines: Members[Ref[Any], Any] = of(drawings_bridge.piece_bridge_lines)
    piece_bridge_sizes: Members[Ref[Any], Any] = of(drawings_bridge.piece_bridge_sizes)
    piece_bridge_words: Members[Ref[Any], Any] = of(drawings_bridge.piece_bridge_words)
    piece_set_backs: Members[Ref[Any], Any] = of(drawings_bridge.piece_set_backs)
    drawing_bridge: DrawingRef = of(drawings_bridge.drawing_bridge)
    piece_bridge_run: Members[Ref[Any], Any] = of(drawings_bridge.piece_bridge_run)
    piece_bridge_figures: Members[Ref[Any], Any] = of(drawings_bridge.piece_bridge_figures)

    # drawings/carve.py
    piece_gauge_cards: Members[Ref[Any], Any] = of(drawings_carve.piece_gauge_cards)
    drawing_neck_gauges: DrawingRef = of(drawings_carve.drawing_neck_gauges)
    piece_facets: Members[Ref[Any], Any] = of(drawings_carve.piece_facets)
    drawing_neck_facets: DrawingRef = of(drawings_carve.drawing_neck_facets)
    piece_flats_scale: Ref[Ratio] = of(drawings_carve.piece_flats_scale)
    drawing_setup_neck_carve: DrawingRef = of(drawings_carve.drawing_setup_neck_carve)
    piece_setup_flats: Members[Ref[Any], Any] = of(drawings_carve.piece_setup_flats)

    # drawings/face_plan.py
    piece_body_places: Members[Ref[Any], Any] = of(drawings_face_plan.piece_body_places)
    piece_face_words: Members[Ref[Any], Any] = of(drawings_face_plan.piece_face_words)
    piece_title_block: Members[Ref[Any], Any] = of(drawings_face_plan.piece_title_block)
    piece_face_told: Members[Ref[Any], Any] = of(drawings_face_plan.piece_face_told)
    drawing_face_plan: DrawingRef = of(drawings_face_plan.drawing_face_plan)
    piece_face_lines: Members[Ref[Any], Any] = of(drawings_face_plan.piece_face_lines)
    piece_face_sizes: Members[Ref[Any], Any] = of(drawings_face_plan.piece_face_sizes)
    piece_face_beside: Members[Ref[Any], Any] = of(drawings_face_plan.piece_face_beside)

    # drawings/gauges.py
    piece_arch_cards: Members[Ref[Any], Any] = of(drawings_gauges.piece_arch_cards)
    piece_depth_cards: Members[Ref[Any], Any] = of(drawings_gauges.piece_depth_cards)
    piece_gap_cards: Members[Ref[Any], Any] = of(drawings_gauges.piece_gap_cards)
    drawing_gauges: DrawingRef = of(drawings_gauges.drawing_gauges)

    # drawings/guitar.py
    piece_plan_body: Members[Ref[Any], Any] = of(drawings_guitar.piece_plan_body)
    piece_plan_head: Members[Ref[Any], Any] = of(drawings_guitar.piece_plan_head)
    piece_plan_sizes: Members[Ref[Any], Any] = of(drawings_guitar.piece_plan_sizes)
    piece_plan_face: Members[Ref[Any], Any] = of(drawings_guitar.piece_plan_face)
    drawing_plan_face: DrawingRef = of(drawings_guitar.drawing_plan_face)
    piece_plan_turned: Ref[Any] = of(drawings_guitar.piece_plan_turned)
    piece_plan_rims: Members[Ref[Any], Any] = of(drawings_guitar.piece_plan_rims)
    piece_plan_board: Members[Ref[Any], Any] = of(drawings_guitar.piece_plan_board)
    piece_plan_strings: Members[Ref[Any], Any] = of(drawings_guitar.piece_plan_strings)
    piece_plan_bridge: Members[Ref[Any], Any] = of(drawings_guitar.piece_plan_bridge)
    piece_plan_side_sizes: Members[Ref[Any], Any] = of(drawings_guitar.piece_plan_side_sizes)
    piece_plan_neck_side: Members[Ref[Any], Any] = of(drawings_guitar.piece_plan_neck_side)
    drawing_plan_side: DrawingRef = of(drawings_guitar.drawing_plan_side)
    piece_cuts: Members[Ref[Any], Any] = of(drawings_guitar.piece_cuts)
    piece_cut_strings: Members[Ref[Any], Any] = of(drawings_guitar.piece_cut_strings)
    drawing_plan_sections: DrawingRef = of(drawings_guitar.drawing_plan_sections)

    # drawings/head.py
    piece_head_edge: Members[Ref[Any], Any] = of(drawings_head.piece_head_edge)
    piece_tuners: Members[Ref[Any], Any] = of(drawings_head.piece_tuners)
    piece_head_strings: Members[Ref[Any], Any] = of(drawings_head.piece_head_strings)
    piece_head_lines: Members[Ref[Any], Any] = of(drawings_head.piece_head_lines)
    piece_tuner_sizes: Members[Ref[Any], Any] = of(drawings_head.piece_tuner_sizes)
    piece_tuner_list: Members[Ref[Any], Any] = of(drawings_head.piece_tuner_list)
    piece_slot_sizes: Members[Ref[Any], Any] = of(drawings_head.piece_slot_sizes)
    drawing_head: DrawingRef = of(drawings_head.drawing_head)
    drawing_setup_neck_head: DrawingRef = of(drawings_head.drawing_setup_neck_head)

    # drawings/heights.py
    piece_turned: TurnedRef = of(drawings_heights.piece_turned)
    piece_set_board: Members[Ref[Any], Any] = of(drawings_heights.piece_set_board)
    piece_set_frets: Members[Ref[Any], Any] = of(drawings_heights.piece_set_frets)
    piece_set_body: Members[Ref[Any], Any] = of(drawings_heights.piece_set_body)
    piece_set_bridge: Members[Ref[Any], Any] = of(drawings_heights.piece_set_bridge)
    piece_set_lines: Members[Ref[Any], Any] = of(drawings_heights.piece_set_lines)
    piece_set_figures: Members[Ref[Any], Any] = of(drawings_heights.piece_set_figures)
    drawing_neck_set: DrawingRef = of(drawings_heights.drawing_neck_set)
    piece_strung: Ref[Any] = of(drawings_heights.piece_strung)
    piece_strung_lines: Members[Ref[Any], Any] = of(drawings_heights.piece_strung_lines)
    piece_strung_drop: Ref[Mm] = of(drawings_heights.piece_strung_drop)
    piece_strung_figures: Members[Ref[Any], Any] = of(drawings_heights.piece_strung_figures)
    drawing_heights: DrawingRef = of(drawings_heights.drawing_heights)

    # drawings/index_template.py
    piece_rail: RailRef = of(drawings_index_template.piece_rail)
    piece_notches: NotchesRef = of(drawings_index_template.piece_notches)
    piece_rail_cut: Members[Ref[Any], Any] = of(drawings_index_template.piece_rail_cut)
    piece_rail_holes: Members[Ref[Any], Any] = of(drawings_index_template.piece_rail_holes)
    piece_rail_board: Members[Ref[Any], Any] = of(drawings_index_template.piece_rail_board)
    piece_rail_numbers: Members[Ref[Any], Any] = of(drawings_index_template.piece_rail_numbers)
    piece_rail_proof: Members[Ref[Any], Any] = of(drawings_index_template.piece_rail_proof)
    piece_rail_words: Members[Ref[Any], Any] = of(drawings_index_template.piece_rail_words)
    piece_template: Members[Ref[Any], Any] = of(drawings_index_template.piece_template)
    piece_lines_instead: Members[Ref[Any], Any] = of(drawings_index_template.piece_lines_instead)
    drawing_index_template: DrawingRef = of(drawings_index_template.drawing_index_template)

    # drawings/machines.py
    piece_laser: MachineRef = of(drawings_machines.piece_laser)
    piece_router: MachineRef = of(drawings_machines.piece_router)

    # drawings/neck.py
    piece_side_board: Members[Ref[Any], Any] = of(drawings_neck.piece_side_board)
    piece_side_shaft: Members[Ref[Any], Any] = of(drawings_neck.piece_side_shaft)
    piece_side_heel: Members[Ref[Any], Any] = of(drawings_neck.piece_side_heel)
    piece_leaning: LeaningRef = of(drawings_neck.piece_leaning)
    piece_side_head: Members[Ref[Any], Any] = of(drawings_neck.piece_side_head)
    piece_side_strings: Members[Ref[Any], Any] = of(drawings_neck.piece_side_strings)
    piece_side_figures: Members[Ref[Any], Any] = of(drawings_neck.piece_side_figures)
    piece_head_figures: Members[Ref[Any], Any] = of(drawings_neck.piece_head_figures)
    drawing_neck: DrawingRef = of(drawings_neck.drawing_neck)
    piece_neck_figures: Members[Ref[Any], Any] = of(drawings_neck.piece_neck_figures)
    piece_nut_places: Members[Ref[float], float] = of(drawings_neck.piece_nut_places)
    piece_nut_ends: Ref[Any] = of(drawings_neck.piece_nut_ends)
    piece_nut_rule: Members[Ref[Any], Any] = of(drawings_neck.piece_nut_rule)
    drawing_nut: DrawingRef = of(drawings_neck.drawing_nut)
    piece_nut_face: Members[Ref[Any], Any] = of(drawings_neck.piece_nut_face)
    piece_nut_front: Members[Ref[Any], Any] = of(drawings_neck.piece_nut_front)
    drawing_setup_nut: DrawingRef = of(drawings_neck.drawing_setup_nut)

    # drawings/neck_plank.py
    piece_leaning_head: LeaningHeadRef = of(drawings_neck_plank.piece_leaning_head)
    piece_neck_line: Members[Ref[Any], Any] = of(drawings_neck_plank.piece_neck_line)
    piece_carved: Members[Ref[Any], Any] = of(drawings_neck_plank.piece_carved)
    piece_plank: Members[Ref[Any], Any] = of(drawings_neck_plank.piece_plank)
    piece_heel_blocks: Members[Ref[Any], Any] = of(drawings_neck_plank.piece_heel_blocks)
    piece_rod: Members[Ref[Any], Any] = of(drawings_neck_plank.piece_rod)
    piece_plank_sizes: Members[Ref[Any], Any] = of(drawings_neck_plank.piece_plank_sizes)
    drawing_neck_plank: DrawingRef = of(drawings_neck_plank.drawing_neck_plank)
    piece_stock: Members[Ref[Any], Any] = of(drawings_neck_plank.piece_stock)
    piece_cut_list: Members[Ref[Any], Any] = of(drawings_neck_plank.piece_cut_list)
    drawing_setup_neck_blank: DrawingRef = of(drawings_neck_plank.drawing_setup_neck_blank)
    drawing_setup_neck_scarf: DrawingRef = of(drawings_neck_plank.drawing_setup_neck_scarf)
    drawing_setup_neck_rod: DrawingRef = of(drawings_neck_plank.drawing_setup_neck_rod)

    # drawings/plan.py
    piece_outline: Members[Ref[Any], Any] = of(drawings_plan.piece_outline)
    piece_slots: Members[Ref[Any], Any] = of(drawings_plan.piece_slots)
    piece_zero_line: Members[Ref[Any], Any] = of(drawings_plan.piece_zero_line)
    piece_strings: Members[Ref[Any], Any] = of(drawings_plan.piece_strings)
    piece_markers: Members[Ref[Any], Any] = of(drawings_plan.piece_markers)
    piece_side_dots: Members[Ref[Any], Any] = of(drawings_plan.piece_side_dots)
    piece_pins: Members[Ref[Any], Any] = of(drawings_plan.piece_pins)
    piece_fret_numbers: Members[Ref[Any], Any] = of(drawings_plan.piece_fret_numbers)
    piece_sizes: Members[Ref[Any], Any] = of(drawings_plan.piece_sizes)
    piece_tail_size: Members[Ref[Any], Any] = of(drawings_plan.piece_tail_size)
    piece_head_words: Members[Ref[Any], Any] = of(drawings_plan.piece_head_words)
    piece_side_words: Members[Ref[Any], Any] = of(drawings_plan.piece_side_words)

    # drawings/section.py
    piece_bottom: Members[Ref[Any], Any] = of(drawings_section.piece_bottom)
    piece_across: AcrossRef = of(drawings_section.piece_across)
    piece_section_wood: Members[Ref[Any], Any] = of(drawings_section.piece_section_wood)
    piece_section_sizes: Members[Ref[Any], Any] = of(drawings_section.piece_section_sizes)
    drawing_section: DrawingRef = of(drawings_section.drawing_section)

    # drawings/setup_braces.py
    piece_small_braces: Members[Ref[Any], Any] = of(drawings_setup_braces.piece_small_braces)
    drawing_setup_braces: DrawingRef = of(drawings_setup_braces.drawing_setup_braces)

    # drawings/setup_bridge.py
    piece_lying_share: Ref[Ratio] = of(drawings_setup_bridge.piece_lying_share)
    piece_lying_lines: Members[Ref[Any], Any] = of(drawings_setup_bridge.piece_lying_lines)
    piece_lying_sizes: Members[Ref[Any], Any] = of(drawings_setup_bridge.piece_lying_sizes)
    piece_lying_words: Members[Ref[Any], Any] = of(drawings_setup_bridge.piece_lying_words)
    drawing_setup_bridge: DrawingRef = of(drawings_setup_bridge.drawing_setup_bridge)

    # drawings/setup_details.py
    piece_ledge_board: Members[Ref[Any], Any] = of(drawings_setup_details.piece_ledge_board)
    piece_ledge_cutter: Members[Ref[Any], Any] = of(drawings_setup_details.piece_ledge_cutter)
    piece_ledge_sizes: Members[Ref[Any], Any] = of(drawings_setup_details.piece_ledge_sizes)
    drawing_setup_ledge: DrawingRef = of(drawings_setup_details.drawing_setup_ledge)
    piece_kerf: Ref[Mm] = of(drawings_setup_details.piece_kerf)
    piece_wire_board: Members[Ref[Any], Any] = of(drawings_setup_details.piece_wire_board)
    piece_wire_profile: Members[Ref[Any], Any] = of(drawings_setup_details.piece_wire_profile)
    piece_wire_end: Members[Ref[Any], Any] = of(drawings_setup_details.piece_wire_end)
    drawing_setup_wire: DrawingRef = of(drawings_setup_details.drawing_setup_wire)

    # drawings/setup_edges.py
    piece_edge_top: Members[Ref[Any], Any] = of(drawings_setup_edges.piece_edge_top)
    piece_edge_back: Members[Ref[Any], Any] = of(drawings_setup_edges.piece_edge_back)
    drawing_setup_channels: DrawingRef = of(drawings_setup_edges.drawing_setup_channels)

    # drawings/setup_plans.py
    piece_squeezed: ViewRef = of(drawings_setup_plans.piece_squeezed)
    piece_blank: PolylineRef = of(drawings_setup_plans.piece_blank)
    piece_board_on_blank: Members[Ref[Any], Any] = of(drawings_setup_plans.piece_board_on_blank)
    drawing_setup_blank: DrawingRef = of(drawings_setup_plans.drawing_setup_blank)
    drawing_setup_layout: DrawingRef = of(drawings_setup_plans.drawing_setup_layout)
    piece_layout_lines: Members[Ref[Any], Any] = of(drawings_setup_plans.piece_layout_lines)
    piece_layout_sizes: Members[Ref[Any], Any] = of(drawings_setup_plans.piece_layout_sizes)
    piece_taper_corners: Ref[Any] = of(drawings_setup_plans.piece_taper_corners)
    piece_taper_board: Members[Ref[Any], Any] = of(drawings_setup_plans.piece_taper_board)
    piece_taper_carriage: Members[Ref[Any], Any] = of(drawings_setup_plans.piece_taper_carriage)
    drawing_setup_taper: DrawingRef = of(drawings_setup_plans.drawing_setup_taper)
    piece_marked_fret: Ref[int] = of(drawings_setup_plans.piece_marked_fret)
    drawing_setup_markers: DrawingRef = of(drawings_setup_plans.drawing_setup_markers)
    piece_markers_between: Members[Ref[Any], Any] = of(drawings_setup_plans.piece_markers_between)
    piece_markers_edge: Members[Ref[Any], Any] = of(drawings_setup_plans.piece_markers_edge)

    # drawings/setup_saddle.py
    piece_saddle_share: Ref[Ratio] = of(drawings_setup_saddle.piece_saddle_share)
    piece_saddle_behind: Members[Ref[Any], Any] = of(drawings_setup_saddle.piece_saddle_behind)
    piece_saddle_above: Members[Ref[Any], Any] = of(drawings_setup_saddle.piece_saddle_above)
    piece_saddle_sides: Members[Ref[Any], Any] = of(drawings_setup_saddle.piece_saddle_sides)
    drawing_setup_saddle: DrawingRef = of(drawings_setup_saddle.drawing_setup_saddle)

    # drawings/setup_sections.py
    piece_sawn: SawnRef = of(drawings_setup_sections.piece_sawn)
    piece_across_view: ViewRef = of(drawings_setup_sections.piece_across_view)
    piece_slot_across: Members[Ref[Any], Any] = of(drawings_setup_sections.piece_slot_across)
    piece_slot_along: Members[Ref[Any], Any] = of(drawings_setup_sections.piece_slot_along)
    piece_slot_machine: Members[Ref[Any], Any] = of(drawings_setup_sections.piece_slot_machine)
    drawing_setup_slot: DrawingRef = of(drawings_setup_sections.drawing_setup_slot)
    piece_shallow: Members[Ref[Any], Any] = of(drawings_setup_sections.piece_shallow)
    drawing_setup_deepen: DrawingRef = of(drawings_setup_sections.drawing_setup_deepen)
    piece_arch_nut: Members[Ref[Any], Any] = of(drawings_setup_sections.piece_arch_nut)
    piece_arch_end: Members[Ref[Any], Any] = of(drawings_setup_sections.piece_arch_end)
    drawing_setup_arch: DrawingRef = of(drawings_setup_sections.drawing_setup_arch)
    piece_side_view: ViewRef = of(drawings_setup_sections.piece_side_view)
    drawing_setup_level: DrawingRef = of(drawings_setup_sections.drawing_setup_level)
    piece_level_sizes: Members[Ref[Any], Any] = of(drawings_setup_sections.piece_level_sizes)
    piece_level_run: Members[Ref[Any], Any] = of(drawings_setup_sections.piece_level_run)
    piece_level_edge: Members[Ref[Any], Any] = of(drawings_setup_sections.piece_level_edge)

    # drawings/setup_side.py
    piece_small_side_share: Ref[Ratio] = of(drawings_setup_side.piece_small_side_share)
    piece_small_side: Members[Ref[Any], Any] = of(drawings_setup_side.piece_small_side)
    piece_small_side_stations: Members[Ref[Any], Any] = of(drawings_setup_side.piece_small_side_stations)
    drawing_setup_side: DrawingRef = of(drawings_setup_side.drawing_setup_side)

    # drawings/string_cards.py
    piece_saddle_card: Members[Ref[Any], Any] = of(drawings_string_cards.piece_saddle_card)
    piece_nut_card: Members[Ref[Any], Any] = of(drawings_string_cards.piece_nut_card)
    piece_spacing_cards: Members[Ref[Any], Any] = of(drawings_string_cards.piece_spacing_cards)
    piece_string_words: Members[Ref[Any], Any] = of(drawings_string_cards.piece_string_words)
    piece_string_sides: Members[Ref[Any], Any] = of(drawings_string_cards.piece_string_sides)
    drawing_string_gauges: DrawingRef = of(drawings_string_cards.drawing_string_gauges)
    piece_string_card_marks: Members[Ref[Any], Any] = of(drawings_string_cards.piece_string_card_marks)

    # drawings/whole.py
    piece_whole_strings: Members[Ref[Any], Any] = of(drawings_whole.piece_whole_strings)
    piece_whole_head: Members[Ref[Any], Any] = of(drawings_whole.piece_whole_head)
    piece_whole_bridge: Members[Ref[Any], Any] = of(drawings_whole.piece_whole_bridge)
    piece_whole_body: Members[Ref[Any], Any] = of(drawings_whole.piece_whole_body)
    piece_whole_board: Members[Ref[Any], Any] = of(drawings_whole.piece_whole_board)

    # findings/on_air.py
    finding_gluing_air: Members[FindingRef, Finding] = of(findings_on_air.finding_gluing_air)
    finding_board_moisture: Members[FindingRef, Finding] = of(findings_on_air.finding_board_moisture)
    finding_sprout: Members[FindingRef, Finding] = of(findings_on_air.finding_sprout)
    finding_binding_step: Members[FindingRef, Finding] = of(findings_on_air.finding_binding_step)
    finding_dome: Members[FindingRef, Finding] = of(findings_on_air.finding_dome)

    # findings/on_board.py
    finding_edge_uneven: Members[FindingRef, Finding] = of(findings_on_board.finding_edge_uneven)
    finding_ledge: Members[FindingRef, Finding] = of(findings_on_board.finding_ledge)
    finding_blank: Members[FindingRef, Finding] = of(findings_on_board.finding_blank)
    finding_blocks: Members[FindingRef, Finding] = of(findings_on_board.finding_blocks)
    finding_index_template: Members[FindingRef, Finding] = of(findings_on_board.finding_index_template)
    finding_levelling: Members[FindingRef, Finding] = of(findings_on_board.finding_levelling)
    finding_shop: Members[FindingRef, Finding] = of(findings_on_board.finding_shop)

    # findings/on_body.py
    finding_body: Members[FindingRef, Finding] = of(findings_on_body.finding_body)
    finding_body_length: Members[FindingRef, Finding] = of(findings_on_body.finding_body_length)
    finding_bend: Members[FindingRef, Finding] = of(findings_on_body.finding_bend)
    finding_bridge_in_bout: Members[FindingRef, Finding] = of(findings_on_body.finding_bridge_in_bout)
    finding_board_over_hole: Members[FindingRef, Finding] = of(findings_on_body.finding_board_over_hole)
    finding_heel: Members[FindingRef, Finding] = of(findings_on_body.finding_heel)

    # findings/on_braces.py
    finding_brace_outside: Members[FindingRef, Finding] = of(findings_on_braces.finding_brace_outside)
    finding_braces_meet: Members[FindingRef, Finding] = of(findings_on_braces.finding_braces_meet)
    finding_brace_low: Members[FindingRef, Finding] = of(findings_on_braces.finding_brace_low)
    finding_plate_outside: Members[FindingRef, Finding] = of(findings_on_braces.finding_plate_outside)
    finding_wings: Members[FindingRef, Finding] = of(findings_on_braces.finding_wings)
    finding_plate_under_pins: Members[FindingRef, Finding] = of(findings_on_braces.finding_plate_under_pins)
    finding_plate_to_legs: Members[FindingRef, Finding] = of(findings_on_braces.finding_plate_to_legs)
    finding_plate_to_braces: Members[FindingRef, Finding] = of(findings_on_braces.finding_plate_to_braces)
    finding_crossing_room: Members[FindingRef, Finding] = of(findings_on_braces.finding_crossing_room)
    finding_braces_to_hole: Members[FindingRef, Finding] = of(findings_on_braces.finding_braces_to_hole)
    finding_pins_clear: Members[FindingRef, Finding] = of(findings_on_braces.finding_pins_clear)
    finding_braces_apart: Members[FindingRef, Finding] = of(findings_on_braces.finding_braces_apart)
    finding_braces_to_blocks: Members[FindingRef, Finding] = of(findings_on_braces.finding_braces_to_blocks)
    finding_brace_stock: Members[FindingRef, Finding] = of(findings_on_braces.finding_brace_stock)

    # findings/on_bridge.py
    finding_break_points: Members[FindingRef, Finding] = of(findings_on_bridge.finding_break_points)
    finding_saddle_in_slot: Members[FindingRef, Finding] = of(findings_on_bridge.finding_saddle_in_slot)
    finding_under_saddle_slot: Members[FindingRef, Finding] = of(findings_on_bridge.finding_under_saddle_slot)
    finding_pins: Members[FindingRef, Finding] = of(findings_on_bridge.finding_pins)
    finding_rows_of_pins: Members[FindingRef, Finding] = of(findings_on_bridge.finding_rows_of_pins)
    finding_break_angle: Members[FindingRef, Finding] = of(findings_on_bridge.finding_break_angle)
    finding_bridge_holds: Members[FindingRef, Finding] = of(findings_on_bridge.finding_bridge_holds)

    # findings/on_carve.py
    finding_rod_over: Members[FindingRef, Finding] = of(findings_on_carve.finding_rod_over)
    finding_rod_corner: Members[FindingRef, Finding] = of(findings_on_carve.finding_rod_corner)
    finding_rod_under_head: Members[FindingRef, Finding] = of(findings_on_carve.finding_rod_under_head)
    finding_rod_blind_end: Members[FindingRef, Finding] = of(findings_on_carve.finding_rod_blind_end)
    finding_rod_reach: Members[FindingRef, Finding] = of(findings_on_carve.finding_rod_reach)
    finding_scarf: Members[FindingRef, Finding] = of(findings_on_carve.finding_scarf)
    finding_neck_plank: Members[FindingRef, Finding] = of(findings_on_carve.finding_neck_plank)
    finding_neck_stock: Members[FindingRef, Finding] = of(findings_on_carve.finding_neck_stock)
    finding_carve_gauged: Members[FindingRef, Finding] = of(findings_on_carve.finding_carve_gauged)
    finding_heel_carved: Members[FindingRef, Finding] = of(findings_on_carve.finding_heel_carved)
    finding_tuner_edge: Members[FindingRef, Finding] = of(findings_on_carve.finding_tuner_edge)
    finding_tuners_apart: Members[FindingRef, Finding] = of(findings_on_carve.finding_tuners_apart)
    finding_strings_in_slots: Members[FindingRef, Finding] = of(findings_on_carve.finding_strings_in_slots)
    finding_strings_past_posts: Members[FindingRef, Finding] = of(findings_on_carve.finding_strings_past_posts)

    # findings/on_edges.py
    finding_behind_channel: Members[FindingRef, Finding] = of(findings_on_edges.finding_behind_channel)
    finding_lining_under: Members[FindingRef, Finding] = of(findings_on_edges.finding_lining_under)
    finding_plate_glued: Members[FindingRef, Finding] = of(findings_on_edges.finding_plate_glued)
    finding_under_purfling: Members[FindingRef, Finding] = of(findings_on_edges.finding_under_purfling)
    finding_binding_cover: Members[FindingRef, Finding] = of(findings_on_edges.finding_binding_cover)
    finding_side_between: Members[FindingRef, Finding] = of(findings_on_edges.finding_side_between)
    finding_binding_bend: Members[FindingRef, Finding] = of(findings_on_edges.finding_binding_bend)
    finding_channel_lean: Members[FindingRef, Finding] = of(findings_on_edges.finding_channel_lean)
    finding_channel_cutters: Members[FindingRef, Finding] = of(findings_on_edges.finding_channel_cutters)

    # findings/on_heights.py
    finding_action_bass: Members[FindingRef, Finding] = of(findings_on_heights.finding_action_bass)
    finding_action_treble: Members[FindingRef, Finding] = of(findings_on_heights.finding_action_treble)
    finding_string_on_crown: Members[FindingRef, Finding] = of(findings_on_heights.finding_string_on_crown)
    finding_nut_slots: Members[FindingRef, Finding] = of(findings_on_heights.finding_nut_slots)
    finding_relief_wanted: Members[FindingRef, Finding] = of(findings_on_heights.finding_relief_wanted)
    finding_body_rise: Members[FindingRef, Finding] = of(findings_on_heights.finding_body_rise)
    finding_crown_left: Members[FindingRef, Finding] = of(findings_on_heights.finding_crown_left)
    finding_saddle_exposed: Members[FindingRef, Finding] = of(findings_on_heights.finding_saddle_exposed)
    finding_saddle_low: Members[FindingRef, Finding] = of(findings_on_heights.finding_saddle_low)
    finding_saddle_high: Members[FindingRef, Finding] = of(findings_on_heights.finding_saddle_high)
    finding_over_top: Members[FindingRef, Finding] = of(findings_on_heights.finding_over_top)

    # findings/on_intonation.py
    finding_intonation: Members[FindingRef, Finding] = of(findings_on_intonation.finding_intonation)
    finding_nut: Members[FindingRef, Finding] = of(findings_on_intonation.finding_nut)
    finding_stiffness_range: Members[FindingRef, Finding] = of(findings_on_intonation.finding_stiffness_range)

    # findings/on_neck.py
    finding_neck_angle: Members[FindingRef, Finding] = of(findings_on_neck.finding_neck_angle)
    finding_neck_reset: Members[FindingRef, Finding] = of(findings_on_neck.finding_neck_reset)
    finding_tongue: Members[FindingRef, Finding] = of(findings_on_neck.finding_tongue)
    finding_under_channel: Members[FindingRef, Finding] = of(findings_on_neck.finding_under_channel)
    finding_wood_stiffness: Members[FindingRef, Finding] = of(findings_on_neck.finding_wood_stiffness)
    finding_relief_too_much: Members[FindingRef, Finding] = of(findings_on_neck.finding_relief_too_much)
    finding_relief_too_little: Members[FindingRef, Finding] = of(findings_on_neck.finding_relief_too_little)
    finding_break_at_nut: Members[FindingRef, Finding] = of(findings_on_neck.finding_break_at_nut)
    finding_sideways_at_nut: Members[FindingRef, Finding] = of(findings_on_neck.finding_sideways_at_nut)

    # findings/on_permits.py
    finding_permits: Members[FindingRef, Finding] = of(findings_on_permits.finding_permits)

    # findings/on_slots.py
    finding_left_under_slot: Members[FindingRef, Finding] = of(findings_on_slots.finding_left_under_slot)
    finding_slot_depth: Members[FindingRef, Finding] = of(findings_on_slots.finding_slot_depth)
    finding_pilot: Members[FindingRef, Finding] = of(findings_on_slots.finding_pilot)
    finding_clearance: Members[FindingRef, Finding] = of(findings_on_slots.finding_clearance)
    finding_crest_loss: Members[FindingRef, Finding] = of(findings_on_slots.finding_crest_loss)
    finding_saw: Members[FindingRef, Finding] = of(findings_on_slots.finding_saw)
    finding_deepening_saw: Members[FindingRef, Finding] = of(findings_on_slots.finding_deepening_saw)
    finding_kerfs_agree: Members[FindingRef, Finding] = of(findings_on_slots.finding_kerfs_agree)

    # findings/on_strings.py
    finding_edge_margin: Members[FindingRef, Finding] = of(findings_on_strings.finding_edge_margin)
    finding_courses: Members[FindingRef, Finding] = of(findings_on_strings.finding_courses)
    finding_pairs: Members[FindingRef, Finding] = of(findings_on_strings.finding_pairs)
    finding_string_gap: Members[FindingRef, Finding] = of(findings_on_strings.finding_string_gap)
    finding_hump: Members[FindingRef, Finding] = of(findings_on_strings.finding_hump)
    finding_inner_strings: Members[FindingRef, Finding] = of(findings_on_strings.finding_inner_strings)

    # findings/on_tension.py
    finding_breaking: Members[FindingRef, Finding] = of(findings_on_tension.finding_breaking)
    finding_slack: Members[FindingRef, Finding] = of(findings_on_tension.finding_slack)
    finding_uneven: Members[FindingRef, Finding] = of(findings_on_tension.finding_uneven)
    finding_estimates: Members[FindingRef, Finding] = of(findings_on_tension.finding_estimates)
    finding_torque: Members[FindingRef, Finding] = of(findings_on_tension.finding_torque)

    # findings/on_wire.py
    finding_wire_fit: Members[FindingRef, Finding] = of(findings_on_wire.finding_wire_fit)
    finding_bead_bite: Members[FindingRef, Finding] = of(findings_on_wire.finding_bead_bite)
    finding_back_bow: Members[FindingRef, Finding] = of(findings_on_wire.finding_back_bow)
    finding_wire_on_hand: Members[FindingRef, Finding] = of(findings_on_wire.finding_wire_on_hand)

    # parts/arch.py
    arch_surface: CrownRef = of(part_arch.arch_surface)
    arch_radius_at_fret: Rows = of(part_arch.arch_radius_at_fret)
    arch_fall_at_edge_treble: Rows = of(part_arch.arch_fall_at_edge_treble)
    arch_fall_at_edge_bass: Rows = of(part_arch.arch_fall_at_edge_bass)
    arch_fall_at_core_treble: Rows = of(part_arch.arch_fall_at_core_treble)
    arch_fall_at_core_bass: Rows = of(part_arch.arch_fall_at_core_bass)
    arch_fall_at_nut_end: Ref[Mm] = of(part_arch.arch_fall_at_nut_end)
    arch_fall_at_tail_end: Ref[Mm] = of(part_arch.arch_fall_at_tail_end)
    arch_fall_under_string: Rows = of(part_arch.arch_fall_under_string)
    arch_over_chord: Rows = of(part_arch.arch_over_chord)
    arch_hump: Rows = of(part_arch.arch_hump)

    # parts/back_bow.py
    back_bow_length: Ref[Mm] = of(part_back_bow.back_bow_length)
    back_bow_frets: Ref[Count] = of(part_back_bow.back_bow_frets)
    back_bow_span: Ref[Mm] = of(part_back_bow.back_bow_span)
    back_bow_layers: LayersRef = of(part_back_bow.back_bow_layers)
    back_bow_curvature: Ref[PerMm] = of(part_back_bow.back_bow_curvature)
    back_bow_least: Ref[Mm] = of(part_back_bow.back_bow_least)
    back_bow_most: Ref[Mm] = of(part_back_bow.back_bow_most)
    back_bow_row: Ref[PerMm2] = of(part_back_bow.back_bow_row)

    # parts/binding.py
    ledge_options: Members[LedgeChoiceRef, LedgeChoice] = of(part_binding.ledge_options)
    ledge_choice: LedgeChoiceRef = of(part_binding.ledge_choice)

    # parts/binding_strips.py
    strip_length: Ref[Mm] = of(part_binding_strips.strip_length)
    strip_list: Members[StripRef, Strip] = of(part_binding_strips.strip_list)

    # parts/blank.py
    blank_length: Ref[Mm] = of(part_blank.blank_length)
    blank_width: Ref[Mm] = of(part_blank.blank_width)
    blank_thickness: Ref[Mm] = of(part_blank.blank_thickness)
    blank_options: Members[BlankChoiceRef, BlankChoice] = of(part_blank.blank_options)
    blank_choice: BlankChoiceRef = of(part_blank.blank_choice)

    # parts/block.py
    block_at_nut: BlockChoiceRef = of(part_block.block_at_nut)
    block_at_end: BlockChoiceRef = of(part_block.block_at_end)
    block_at_middle: BlockChoiceRef = of(part_block.block_at_middle)

    # parts/board.py
    board_width_position: Ref[Mm] = of(part_board.board_width_position)
    board_growth: Ref[Ratio] = of(part_board.board_growth)
    board_half_taper_angle: Ref[Radians] = of(part_board.board_half_taper_angle)
    board_taper_angle: Ref[Radians] = of(part_board.board_taper_angle)
    board_nut_position: Ref[Mm] = of(part_board.board_nut_position)
    board_tail_position: Ref[Mm] = of(part_board.board_tail_position)
    board_length: Ref[Mm] = of(part_board.board_length)
    board_width_at_fret: Rows = of(part_board.board_width_at_fret)
    board_width_at_tail: Ref[Mm] = of(part_board.board_width_at_tail)
    edge_y_treble: Rows = of(part_board.edge_y_treble)
    edge_y_bass: Rows = of(part_board.edge_y_bass)
    board_nut_reach_treble: Ref[Mm] = of(part_board.board_nut_reach_treble)
    board_nut_reach_bass: Ref[Mm] = of(part_board.board_nut_reach_bass)
    board_nut_length: Ref[Mm] = of(part_board.board_nut_length)
    edge_x_treble: Rows = of(part_board.edge_x_treble)
    edge_x_bass: Rows = of(part_board.edge_x_bass)
    core_inset: Ref[Mm] = of(part_board.core_inset)
    core_inset_across: Ref[Mm] = of(part_board.core_inset_across)
    core_width_at_fret: Rows = of(part_board.core_width_at_fret)
    core_y_treble: Rows = of(part_board.core_y_treble)
    core_y_bass: Rows = of(part_board.core_y_bass)
    core_x_treble: Rows = of(part_board.core_x_treble)
    core_x_bass: Rows = of(part_board.core_x_bass)
    core_tail_position: Ref[Mm] = of(part_board.core_tail_position)
    board_outline: QuadrilateralRef = of(part_board.board_outline)
    core_outline: QuadrilateralRef = of(part_board.core_outline)

    # parts/body.py
    body_edge: Ref[Mm] = of(part_body.body_edge)
    body_saddle: Ref[Mm] = of(part_body.body_saddle)
    body_zeros: ZerosRef = of(part_body.body_zeros)
    body_length: Ref[Mm] = of(part_body.body_length)
    body_width: Ref[Mm] = of(part_body.body_width)
    body_perimeter: Ref[Mm] = of(part_body.body_perimeter)
    body_bouts: Members[BoutRef, Bout] = of(part_body.body_bouts)
    body_tightest_bend: Ref[Mm] = of(part_body.body_tightest_bend)
    body_bend_ratio: Ref[Ratio] = of(part_body.body_bend_ratio)
    body_width_share: Ref[Ratio] = of(part_body.body_width_share)
    body_sides: Members[UnrolledSideRef, UnrolledSide] = of(part_body.body_sides)
    body_shells: Members[ShellRef, Shell] = of(part_body.body_shells)
    body_rise_top: Ref[Mm] = of(part_body.body_rise_top)
    body_rise_back: Ref[Mm] = of(part_body.body_rise_back)
    body_deepest: Ref[Mm] = of(part_body.body_deepest)
    body_air_volume: Ref[Mm3] = of(part_body.body_air_volume)
    body_blocks: Members[BodyBlockRef, BodyBlock] = of(part_body.body_blocks)
    body_linings_volume: Ref[Mm3] = of(part_body.body_linings_volume)
    body_air_openings: Members[Ref[Mm], Mm] = of(part_body.body_air_openings)
    body_air_rigid: Ref[Hertz] = of(part_body.body_air_rigid)
    body_air_least: Ref[Hertz] = of(part_body.body_air_least)
    body_air_most: Ref[Hertz] = of(part_body.body_air_most)
    body_plate_length: Ref[Mm] = of(part_body.body_plate_length)
    body_plate_half_width: Ref[Mm] = of(part_body.body_plate_half_width)
    body_plate_width: Ref[Mm] = of(part_body.body_plate_width)
    body_mould_length: Ref[Mm] = of(part_body.body_mould_length)
    body_mould_half_width: Ref[Mm] = of(part_body.body_mould_half_width)
    body_mould_thickness: Ref[Mm] = of(part_body.body_mould_thickness)

    # parts/brace_room.py
    room_bridge_to_legs: Ref[Mm] = of(part_brace_room.room_bridge_to_legs)
    room_plate_to_legs: Ref[Mm] = of(part_brace_room.room_plate_to_legs)
    room_plate_to_braces: Ref[Mm] = of(part_brace_room.room_plate_to_braces)
    room_pins_in_plate: Ref[Mm] = of(part_brace_room.room_pins_in_plate)
    room_crossing_to_hole: Ref[Mm] = of(part_brace_room.room_crossing_to_hole)
    room_braces_to_hole: Ref[Mm] = of(part_brace_room.room_braces_to_hole)
    room_pins_to_braces: Ref[Mm] = of(part_brace_room.room_pins_to_braces)
    room_nearest_braces: Members[Ref[str], str] = of(part_brace_room.room_nearest_braces)
    room_between_braces: Ref[Mm] = of(part_brace_room.room_between_braces)
    room_braces_to_blocks: Ref[Mm] = of(part_brace_room.room_braces_to_blocks)
    room_outside: Members[Ref[str], str] = of(part_brace_room.room_outside)

    # parts/brace_stock.py
    stick_list: Members[StickRef, Stick] = of(part_brace_stock.stick_list)
    stick_billets: Members[BilletRef, Billet] = of(part_brace_stock.stick_billets)
    stick_wanting: Members[StickRef, Stick] = of(part_brace_stock.stick_wanting)

    # parts/braces.py
    brace_zeros: ZerosRef = of(part_braces.brace_zeros)
    brace_list: Members[BraceRef, Brace] = of(part_braces.brace_list)
    brace_crossings: Members[CrossingRef, Crossing] = of(part_braces.brace_crossings)
    brace_unmet: Members[Ref[str], str] = of(part_braces.brace_unmet)
    brace_low: Members[Ref[str], str] = of(part_braces.brace_low)
    brace_tallest_top: Ref[Mm] = of(part_braces.brace_tallest_top)
    brace_tallest_back: Ref[Mm] = of(part_braces.brace_tallest_back)
    brace_places_top: Rows = of(part_braces.brace_places_top)
    brace_places_back: Rows = of(part_braces.brace_places_back)
    brace_legs: Members[Ref[str], str] = of(part_braces.brace_legs)
    brace_bridge: Members[QuadrilateralRef, Quadrilateral] = of(part_braces.brace_bridge)
    brace_pins: Members[SpotRef, Spot] = of(part_braces.brace_pins)

    # parts/bridge.py
    bridge_front_edge: Ref[Mm] = of(part_bridge.bridge_front_edge)
    bridge_front_from_nut: Ref[Mm] = of(part_bridge.bridge_front_from_nut)
    bridge_front_from_join: Ref[Mm] = of(part_bridge.bridge_front_from_join)
    bridge_front_from_octave: Ref[Mm] = of(part_bridge.bridge_front_from_octave)
    bridge_outline: QuadrilateralRef = of(part_bridge.bridge_outline)
    bridge_width_square: Ref[Mm] = of(part_bridge.bridge_width_square)
    bridge_hold_row: Rows = of(part_bridge.bridge_hold_row)
    bridge_hold_slant: Ref[Ratio] = of(part_bridge.bridge_hold_slant)
    bridge_hold_y: Rows = of(part_bridge.bridge_hold_y)
    bridge_hold_x: Rows = of(part_bridge.bridge_hold_x)
    bridge_hold_second: Ref[Mm] = of(part_bridge.bridge_hold_second)
    bridge_hold_step: Ref[Mm] = of(part_bridge.bridge_hold_step)
    bridge_hold_across: Ref[Mm] = of(part_bridge.bridge_hold_across)
    bridge_hold_spacing: Ref[Ratio] = of(part_bridge.bridge_hold_spacing)
    bridge_hold_between: Ref[Ratio] = of(part_bridge.bridge_hold_between)
    bridge_hold_wood: Ref[Mm] = of(part_bridge.bridge_hold_wood)
    bridge_hold_wood_across: Ref[Mm] = of(part_bridge.bridge_hold_wood_across)
    bridge_hold_clear: Rows = of(part_bridge.bridge_hold_clear)
    bridge_hold_wall: Rows = of(part_bridge.bridge_hold_wall)
    bridge_hold_behind_slot: Rows = of(part_bridge.bridge_hold_behind_slot)
    bridge_break_run: Rows = of(part_bridge.bridge_break_run)
    bridge_break_angle: Rows = of(part_bridge.bridge_break_angle)
    bridge_under_slot: Ref[Mm] = of(part_bridge.bridge_under_slot)
    bridge_lever: Rows = of(part_bridge.bridge_lever)
    bridge_torque: Ref[NewtonM] = of(part_bridge.bridge_torque)

    # parts/bridge_plate.py
    plate_front: Ref[Mm] = of(part_bridge_plate.plate_front)
    plate_back: Ref[Mm] = of(part_bridge_plate.plate_back)
    plate_slant: Ref[Ratio] = of(part_bridge_plate.plate_slant)
    plate_lean: Ref[Radians] = of(part_bridge_plate.plate_lean)
    plate_shapes: Members[PlateShapeRef, PlateShape] = of(part_bridge_plate.plate_shapes)
    plate_outside: Members[Ref[str], str] = of(part_bridge_plate.plate_outside)
    plate_width: Ref[Mm] = of(part_bridge_plate.plate_width)
    plate_length: Ref[Mm] = of(part_bridge_plate.plate_length)

    # parts/cards.py
    card_arches: Members[ArchCardRef, ArchCard] = of(part_cards.card_arches)
    card_depths: Members[DepthCardRef, DepthCard] = of(part_cards.card_depths)
    card_gaps: Members[GapCardRef, GapCard] = of(part_cards.card_gaps)
    card_notch_depth: Ref[Mm] = of(part_cards.card_notch_depth)
    card_notch_wall: Ref[Mm] = of(part_cards.card_notch_wall)
    card_nut_notch_wall: Ref[Mm] = of(part_cards.card_nut_notch_wall)
    card_nut_notch_stands: Ref[bool] = of(part_cards.card_nut_notch_stands)
    card_notches_serve: Ref[bool] = of(part_cards.card_notches_serve)
    card_proof_notch: Ref[Mm] = of(part_cards.card_proof_notch)
    card_proof_octave: Ref[Mm] = of(part_cards.card_proof_octave)
    card_proof_pin: Ref[Mm] = of(part_cards.card_proof_pin)
    card_rail_head: Ref[Mm] = of(part_cards.card_rail_head)
    card_rail_tail: Ref[Mm] = of(part_cards.card_rail_tail)
    card_rail_back: Ref[Mm] = of(part_cards.card_rail_back)
    card_rail_front: Ref[Mm] = of(part_cards.card_rail_front)

    # parts/channels.py
    channel_edge_top: EdgeRef = of(part_channels.channel_edge_top)
    channel_edge_back: EdgeRef = of(part_channels.channel_edge_back)
    channel_edges: Members[EdgeRef, Edge] = of(part_channels.channel_edges)
    channel_lines: Members[EdgeLinesRef, EdgeLines] = of(part_channels.channel_lines)
    channel_list: Members[ChannelRef, Channel] = of(part_channels.channel_list)
    channel_side_left: Ref[Mm] = of(part_channels.channel_side_left)
    channel_tilts: Members[TiltRef, Tilt] = of(part_channels.channel_tilts)
    channel_cuts: Members[CutRef, Cut] = of(part_channels.channel_cuts)
    channel_flush_cutter: Ref[Mm] = of(part_channels.channel_flush_cutter)

    # parts/dome_year.py
    dome_brace_width: Ref[Mm] = of(part_dome_year.dome_brace_width)
    dome_brace_height: Ref[Mm] = of(part_dome_year.dome_brace_height)
    dome_brace_spacing: Ref[Mm] = of(part_dome_year.dome_brace_spacing)
    dome_curl: Ref[PerMm] = of(part_dome_year.dome_curl)
    dome_curvature_dry: Ref[PerMm] = of(part_dome_year.dome_curvature_dry)
    dome_curvature_dry_least: Ref[PerMm] = of(part_dome_year.dome_curvature_dry_least)
    dome_curvature_wet: Ref[PerMm] = of(part_dome_year.dome_curvature_wet)
    dome_curvature_wet_least: Ref[PerMm] = of(part_dome_year.dome_curvature_wet_least)
    dome_across: Ref[Mm] = of(part_dome_year.dome_across)
    dome_rise_dry: Ref[Mm] = of(part_dome_year.dome_rise_dry)
    dome_rise_made: Ref[Mm] = of(part_dome_year.dome_rise_made)
    dome_rise_wet: Ref[Mm] = of(part_dome_year.dome_rise_wet)
    dome_rise_dry_least: Ref[Mm] = of(part_dome_year.dome_rise_dry_least)
    dome_rise_wet_least: Ref[Mm] = of(part_dome_year.dome_rise_wet_least)

    # parts/features.py
    feature_list: Members[FeatureRef, Feature] = of(part_features.feature_list)

    # parts/hands.py
    hand_strings: HandedRef = of(part_hands.hand_strings)
    hand_frets: HandedRef = of(part_hands.hand_frets)
    hand_saddle: HandedRef = of(part_hands.hand_saddle)
    hand_braces: HandedRef = of(part_hands.hand_braces)
    hand_posts: HandedRef = of(part_hands.hand_posts)

    # parts/head.py
    head_outline: RunRef = of(part_head.head_outline)
    head_reach: Ref[Mm] = of(part_head.head_reach)
    head_width: Ref[Mm] = of(part_head.head_width)
    head_hole_to_edge: Rows = of(part_head.head_hole_to_edge)
    head_hole_to_face: Ref[Mm] = of(part_head.head_hole_to_face)
    head_roller_depth: Ref[Mm] = of(part_head.head_roller_depth)
    head_slots: Members[QuadrilateralRef, Quadrilateral] = of(part_head.head_slots)
    head_slots_apart: Ref[Mm] = of(part_head.head_slots_apart)
    head_holes_apart: Ref[Mm] = of(part_head.head_holes_apart)
    head_scarf_length: Ref[Mm] = of(part_head.head_scarf_length)
    head_slot_over_face: Rows = of(part_head.head_slot_over_face)
    head_run: Rows = of(part_head.head_run)
    head_drop: Rows = of(part_head.head_drop)
    head_break_angle: Rows = of(part_head.head_break_angle)
    head_sideways_bend: Rows = of(part_head.head_sideways_bend)
    head_post_clear: Rows = of(part_head.head_post_clear)
    head_straight_y: Rows = of(part_head.head_straight_y)
    head_entry: Rows = of(part_head.head_entry)
    head_slot_room: Rows = of(part_head.head_slot_room)
    head_slot_ramp: Rows = of(part_head.head_slot_ramp)

    # parts/heights.py
    action_fret: Ref[Count] = of(part_heights.action_fret)
    action_share: Rows = of(part_heights.action_share)
    action_wanted: Rows = of(part_heights.action_wanted)
    action_nut_fret: Ref[Count] = of(part_heights.action_nut_fret)
    action_nut: Rows = of(part_heights.action_nut)
    crown_height: Ref[Mm] = of(part_heights.crown_height)
    crown_top: Rows = of(part_heights.crown_top)
    height_slope: Rows = of(part_heights.height_slope)
    height_at_zero: Rows = of(part_heights.height_at_zero)
    height_over_crown: Rows = of(part_heights.height_over_crown)
    height_at_scale_end: Rows = of(part_heights.height_at_scale_end)
    height_saddle_x: Rows = of(part_heights.height_saddle_x)
    height_run: Rows = of(part_heights.height_run)
    height_at_saddle: Rows = of(part_heights.height_at_saddle)
    height_over_chord: Rows = of(part_heights.height_over_chord)
    height_saddle_share: Rows = of(part_heights.height_saddle_share)
    height_at_saddle_unloaded: Rows = of(part_heights.height_at_saddle_unloaded)

    # parts/intonation.py
    intonation_paths: StringPathsRef = of(part_intonation.intonation_paths)
    intonation_ratio: Rows = of(part_intonation.intonation_ratio)
    intonation_finger: Rows = of(part_intonation.intonation_finger)
    intonation_strings: StringStiffnessRef = of(part_intonation.intonation_strings)
    intonation_weights: Rows = of(part_intonation.intonation_weights)
    intonation_cents_before: Rows = of(part_intonation.intonation_cents_before)
    intonation_best: SetBacksRef = of(part_intonation.intonation_best)
    intonation_best_saddle: SetBacksRef = of(part_intonation.intonation_best_saddle)
    intonation_break_point: Rows = of(part_intonation.intonation_break_point)
    intonation_nut_freedom: FreedomRef = of(part_intonation.intonation_nut_freedom)
    intonation_saddle_freedom: FreedomRef = of(part_intonation.intonation_saddle_freedom)
    intonation_nut_best: Rows = of(part_intonation.intonation_nut_best)
    intonation_saddle_best: Rows = of(part_intonation.intonation_saddle_best)
    intonation_rms_best: Ref[Cents] = of(part_intonation.intonation_rms_best)
    intonation_nut_forward: Rows = of(part_intonation.intonation_nut_forward)
    intonation_paths_made: StringPathsRef = of(part_intonation.intonation_paths_made)
    intonation_cents_after: Rows = of(part_intonation.intonation_cents_after)
    intonation_rms_before: Rows = of(part_intonation.intonation_rms_before)
    intonation_rms_after: Rows = of(part_intonation.intonation_rms_after)
    intonation_rms_all_before: Ref[Cents] = of(part_intonation.intonation_rms_all_before)
    intonation_rms_all_after: Ref[Cents] = of(part_intonation.intonation_rms_all_after)
    intonation_rms_softest: Rows = of(part_intonation.intonation_rms_softest)
    intonation_rms_stiffest: Rows = of(part_intonation.intonation_rms_stiffest)
    intonation_octave_move: Rows = of(part_intonation.intonation_octave_move)

    # parts/lean.py
    lean_at_tail: Ref[Mm] = of(part_lean.lean_at_tail)
    lean_at_nut: Ref[Mm] = of(part_lean.lean_at_nut)
    lean_wedge: Ref[Mm] = of(part_lean.lean_wedge)
    lean_under_string: Rows = of(part_lean.lean_under_string)
    lean_at_edge_treble: Rows = of(part_lean.lean_at_edge_treble)
    lean_at_edge_bass: Rows = of(part_lean.lean_at_edge_bass)
    lean_at_slot_treble: Rows = of(part_lean.lean_at_slot_treble)
    lean_at_slot_bass: Rows = of(part_lean.lean_at_slot_bass)
    lean_over_middle: Ref[Mm] = of(part_lean.lean_over_middle)
    lean_corner_nut_treble: Ref[Mm] = of(part_lean.lean_corner_nut_treble)
    lean_corner_nut_bass: Ref[Mm] = of(part_lean.lean_corner_nut_bass)
    lean_corner_tail_treble: Ref[Mm] = of(part_lean.lean_corner_tail_treble)
    lean_corner_tail_bass: Ref[Mm] = of(part_lean.lean_corner_tail_bass)

    # parts/markers.py
    marker_position: Rows = of(part_markers.marker_position)
    marker_slant: Rows = of(part_markers.marker_slant)
    marker_offset: Rows = of(part_markers.marker_offset)
    marker_side_depth: Rows = of(part_markers.marker_side_depth)

    # parts/movement.py
    swell_moisture_made: Ref[Percent] = of(part_movement.swell_moisture_made)
    swell_moisture_dry: Ref[Percent] = of(part_movement.swell_moisture_dry)
    swell_moisture_wet: Ref[Percent] = of(part_movement.swell_moisture_wet)
    swell_moistures: Members[Ref[Percent], Percent] = of(part_movement.swell_moistures)
    swell_width_dry_least: Rows = of(part_movement.swell_width_dry_least)
    swell_width_dry_most: Rows = of(part_movement.swell_width_dry_most)
    swell_width_wet_least: Rows = of(part_movement.swell_width_wet_least)
    swell_width_wet_most: Rows = of(part_movement.swell_width_wet_most)
    sprout_least: Ref[Mm] = of(part_movement.sprout_least)
    sprout_most: Ref[Mm] = of(part_movement.sprout_most)
    sprout_moisture: Ref[Percent] = of(part_movement.sprout_moisture)
    swell_step_dry: Ref[Mm] = of(part_movement.swell_step_dry)

    # parts/neck_blank.py
    plank_scarfed: Ref[bool] = of(part_neck_blank.plank_scarfed)
    plank_head_start: Ref[Mm] = of(part_neck_blank.plank_head_start)
    plank_tail: Ref[Mm] = of(part_neck_blank.plank_tail)
    plank_shaft: Ref[Mm] = of(part_neck_blank.plank_shaft)
    plank_head_along: Ref[Mm] = of(part_neck_blank.plank_head_along)
    plank_scarf_run: Ref[Mm] = of(part_neck_blank.plank_scarf_run)
    plank_saw_run: Ref[Mm] = of(part_neck_blank.plank_saw_run)
    plank_head_rest: Ref[Mm] = of(part_neck_blank.plank_head_rest)
    plank_length: Ref[Mm] = of(part_neck_blank.plank_length)
    plank_head_fall: Ref[Mm] = of(part_neck_blank.plank_head_fall)
    plank_thickness: Ref[Mm] = of(part_neck_blank.plank_thickness)
    plank_over: Ref[Mm] = of(part_neck_blank.plank_over)
    plank_width: Ref[Mm] = of(part_neck_blank.plank_width)
    plank_heel_blocks: Members[NeckPieceRef, NeckPiece] = of(part_neck_blank.plank_heel_blocks)
    plank_ear: Ref[Mm] = of(part_neck_blank.plank_ear)
    plank_pieces: Members[NeckPieceRef, NeckPiece] = of(part_neck_blank.plank_pieces)
    plank_strip_length: Ref[Mm] = of(part_neck_blank.plank_strip_length)
    plank_yields: Members[NeckYieldRef, NeckYield] = of(part_neck_blank.plank_yields)
    plank_choice: NeckYieldRef = of(part_neck_blank.plank_choice)
    plank_layout: Members[PieceOnStockRef, PieceOnStock] = of(part_neck_blank.plank_layout)

    # parts/neck_carve.py
    carve_shape: CarveShapeRef = of(part_neck_carve.carve_shape)
    carve_form: TaperedBarRef = of(part_neck_carve.carve_form)
    carve_heel_start: Ref[Mm] = of(part_neck_carve.carve_heel_start)
    carve_heel_cap_start: Ref[Mm] = of(part_neck_carve.carve_heel_cap_start)
    carve_stations: Members[CarveStationRef, CarveStation] = of(part_neck_carve.carve_stations)
    carve_gauged: Ref[Count] = of(part_neck_carve.carve_gauged)
    carve_facet_angle: Ref[Radians] = of(part_neck_carve.carve_facet_angle)
    carve_lines: Members[CarveLineRef, CarveLine] = of(part_neck_carve.carve_lines)
    carve_flat_back: Ref[Mm] = of(part_neck_carve.carve_flat_back)
    carve_heel_curve: RunRef = of(part_neck_carve.carve_heel_curve)
    carve_deepest: Ref[Mm] = of(part_neck_carve.carve_deepest)

    # parts/neck_section.py
    neck_section_board_slotted: MomentsRef = of(part_neck_section.neck_section_board_slotted)
    neck_section_bars: MomentsRef = of(part_neck_section.neck_section_bars)
    neck_section_bars_alone: MomentsRef = of(part_neck_section.neck_section_bars_alone)
    neck_section_channel: MomentsRef = of(part_neck_section.neck_section_channel)
    neck_section_below: MomentsRef = of(part_neck_section.neck_section_below)
    neck_section_whole: MomentsRef = of(part_neck_section.neck_section_whole)
    neck_section_slotted: MomentsRef = of(part_neck_section.neck_section_slotted)
    neck_section_stiffness: Rows = of(part_neck_section.neck_section_stiffness)
    neck_section_stiffness_slotted: Rows = of(part_neck_section.neck_section_stiffness_slotted)
    neck_section_stiffness_most: Rows = of(part_neck_section.neck_section_stiffness_most)
    neck_section_stiffness_least: Rows = of(part_neck_section.neck_section_stiffness_least)
    neck_section_slots_keep: Rows = of(part_neck_section.neck_section_slots_keep)
    neck_section_axis: Rows = of(part_neck_section.neck_section_axis)
    neck_section_channel_depth: Ref[Mm] = of(part_neck_section.neck_section_channel_depth)
    neck_section_under_channel: Rows = of(part_neck_section.neck_section_under_channel)

    # parts/neck_set.py
    neck_set_run: Rows = of(part_neck_set.neck_set_run)
    neck_set_run_mean: Ref[Mm] = of(part_neck_set.neck_set_run_mean)
    neck_set_height_mean: Ref[Mm] = of(part_neck_set.neck_set_height_mean)
    neck_set_board_at_join: Ref[Mm] = of(part_neck_set.neck_set_board_at_join)
    neck_set_dome_rise: Ref[Mm] = of(part_neck_set.neck_set_dome_rise)
    neck_set_bridge_top: Ref[Mm] = of(part_neck_set.neck_set_bridge_top)
    neck_angle_target: Ref[Radians] = of(part_neck_set.neck_angle_target)
    neck_angle_made: Ref[Radians] = of(part_neck_set.neck_angle_made)
    neck_angle_face: Ref[Radians] = of(part_neck_set.neck_angle_face)
    neck_set_straightedge: Ref[Mm] = of(part_neck_set.neck_set_straightedge)
    neck_set_straightedge_on_board: Ref[Mm] = of(part_neck_set.neck_set_straightedge_on_board)
    neck_set_straightedge_over_top: Ref[Mm] = of(part_neck_set.neck_set_straightedge_over_top)
    heel_wedge: Ref[Mm] = of(part_neck_set.heel_wedge)
    heel_wedge_to_take: Ref[Mm] = of(part_neck_set.heel_wedge_to_take)
    neck_set_exposed: Rows = of(part_neck_set.neck_set_exposed)
    neck_set_exposed_mean: Ref[Mm] = of(part_neck_set.neck_set_exposed_mean)
    neck_set_over_top: Rows = of(part_neck_set.neck_set_over_top)
    neck_set_over_top_mean: Ref[Mm] = of(part_neck_set.neck_set_over_top_mean)
    neck_set_action: Rows = of(part_neck_set.neck_set_action)
    neck_set_tongue_gap: Ref[Mm] = of(part_neck_set.neck_set_tongue_gap)
    neck_set_drop: Ref[Mm] = of(part_neck_set.neck_set_drop)

    # parts/nut_slots.py
    nut_slot_over_board: Rows = of(part_nut_slots.nut_slot_over_board)
    nut_slot_over_crest: Rows = of(part_nut_slots.nut_slot_over_crest)
    nut_slot_over_first: Rows = of(part_nut_slots.nut_slot_over_first)
    nut_slot_depth: Rows = of(part_nut_slots.nut_slot_depth)
    nut_slot_width: Rows = of(part_nut_slots.nut_slot_width)
    nut_slot_top: Rows = of(part_nut_slots.nut_slot_top)
    nut_slot_blank: Ref[Mm] = of(part_nut_slots.nut_slot_blank)

    # parts/pairs.py
    pair_paths: StringPathsRef = of(part_pairs.pair_paths)
    pair_rms_on_one: Rows = of(part_pairs.pair_rms_on_one)
    pair_rms_on_two: Rows = of(part_pairs.pair_rms_on_two)
    pair_rms_all_on_one: Ref[Cents] = of(part_pairs.pair_rms_all_on_one)
    pair_rms_all_on_two: Ref[Cents] = of(part_pairs.pair_rms_all_on_two)

    # parts/relief.py
    relief_curvature: Ref[PerMm] = of(part_relief.relief_curvature)
    relief_rise: Rows = of(part_relief.relief_rise)
    relief_lever: Rows = of(part_relief.relief_lever)
    relief_stations: Rows = of(part_relief.relief_stations)
    relief_neck: PulledNeckRef = of(part_relief.relief_neck)
    relief_under_pull_least: Ref[Mm] = of(part_relief.relief_under_pull_least)
    relief_under_pull_most: Ref[Mm] = of(part_relief.relief_under_pull_most)
    relief_predicted_least: Ref[Mm] = of(part_relief.relief_predicted_least)
    relief_predicted_most: Ref[Mm] = of(part_relief.relief_predicted_most)
    relief_for_rod_least: Ref[Mm] = of(part_relief.relief_for_rod_least)
    relief_for_rod_most: Ref[Mm] = of(part_relief.relief_for_rod_most)
    relief_rod_moment_least: Ref[NewtonMm] = of(part_relief.relief_rod_moment_least)
    relief_rod_moment_most: Ref[NewtonMm] = of(part_relief.relief_rod_moment_most)

    # parts/rod_channel.py
    rod_start: Ref[Mm] = of(part_rod_channel.rod_start)
    rod_start_away: Ref[Mm] = of(part_rod_channel.rod_start_away)
    rod_body_end: Ref[Mm] = of(part_rod_channel.rod_body_end)
    rod_asked: Ref[Mm] = of(part_rod_channel.rod_asked)
    rod_nut_end: Ref[Mm] = of(part_rod_channel.rod_nut_end)
    rod_end: Ref[Mm] = of(part_rod_channel.rod_end)
    rod_blind_left: Ref[Mm] = of(part_rod_channel.rod_blind_left)
    rod_unreached: Ref[Mm] = of(part_rod_channel.rod_unreached)
    rod_over: Rows = of(part_rod_channel.rod_over)
    rod_corner: Rows = of(part_rod_channel.rod_corner)
    rod_under_head: Ref[Mm] = of(part_rod_channel.rod_under_head)

    # parts/saddle.py
    saddle_set_back_best: Rows = of(part_saddle.saddle_set_back_best)
    saddle_set_back: Rows = of(part_saddle.saddle_set_back)
    saddle_break_x: Rows = of(part_saddle.saddle_break_x)
    saddle_slant: Ref[Ratio] = of(part_saddle.saddle_slant)
    saddle_position: Ref[Mm] = of(part_saddle.saddle_position)
    saddle_off_line: Rows = of(part_saddle.saddle_off_line)
    saddle_to_face: Rows = of(part_saddle.saddle_to_face)
    saddle_angle: Ref[Radians] = of(part_saddle.saddle_angle)
    saddle_reach: Ref[Mm] = of(part_saddle.saddle_reach)
    saddle_end_treble: Ref[Mm] = of(part_saddle.saddle_end_treble)
    saddle_end_bass: Ref[Mm] = of(part_saddle.saddle_end_bass)
    saddle_length: Ref[Mm] = of(part_saddle.saddle_length)
    saddle_tall: Rows = of(part_saddle.saddle_tall)
    saddle_showing: Ref[Ratio] = of(part_saddle.saddle_showing)
    saddle_blank_height: Ref[Mm] = of(part_saddle.saddle_blank_height)

    # parts/saw.py
    saw_main: SawRef = of(part_saw.saw_main)
    saw_deepening: SawRef = of(part_saw.saw_deepening)
    saw_kerf: Ref[Mm] = of(part_saw.saw_kerf)
    saw_kerf_over: Ref[Mm] = of(part_saw.saw_kerf_over)

    # parts/scale.py
    scale_run_bass: Ref[Mm] = of(part_scale.scale_run_bass)
    scale_run_treble: Ref[Mm] = of(part_scale.scale_run_treble)
    scale_lead: Ref[Mm] = of(part_scale.scale_lead)
    scale_run: Ref[Mm] = of(part_scale.scale_run)
    fret_fraction: Rows = of(part_scale.fret_fraction)
    fret_x_bass: Rows = of(part_scale.fret_x_bass)
    fret_x_treble: Rows = of(part_scale.fret_x_treble)
    fret_position: Rows = of(part_scale.fret_position)
    fret_step: Rows = of(part_scale.fret_step)
    fret_half_spread: Rows = of(part_scale.fret_half_spread)
    fret_slant: Rows = of(part_scale.fret_slant)
    fret_angle: Rows = of(part_scale.fret_angle)
    fret_cents_per_mm: Rows = of(part_scale.fret_cents_per_mm)
    fret_cents_per_tenth: Rows = of(part_scale.fret_cents_per_tenth)

    # parts/section.py
    section_board: MomentsRef = of(part_section.section_board)
    section_slotted_straight: MomentsRef = of(part_section.section_slotted_straight)
    section_slotted_following: MomentsRef = of(part_section.section_slotted_following)
    section_neck_depth: Rows = of(part_section.section_neck_depth)
    section_neck: MomentsRef = of(part_section.section_neck)
    section_kept_straight: Rows = of(part_section.section_kept_straight)
    section_kept_following: Rows = of(part_section.section_kept_following)
    section_kept_straight_with_neck: Rows = of(part_section.section_kept_straight_with_neck)
    section_kept_following_with_neck: Rows = of(part_section.section_kept_following_with_neck)

    # parts/sides.py
    side_length: Ref[Mm] = of(part_sides.side_length)
    side_length_middle: Ref[Mm] = of(part_sides.side_length_middle)
    side_along: Rows = of(part_sides.side_along)
    side_upper: Rows = of(part_sides.side_upper)
    side_lower: Rows = of(part_sides.side_lower)
    side_depth: Rows = of(part_sides.side_depth)
    side_stations: Members[SideStationRef, SideStation] = of(part_sides.side_stations)
    side_deepest: Ref[Mm] = of(part_sides.side_deepest)
    side_shallowest: Ref[Mm] = of(part_sides.side_shallowest)
    side_extent: Ref[Mm] = of(part_sides.side_extent)
    side_blank_length: Ref[Mm] = of(part_sides.side_blank_length)
    side_blank_width: Ref[Mm] = of(part_sides.side_blank_width)

    # parts/slot_options.py
    cutting_options: Members[SlotOptionRef, SlotOption] = of(part_slot_options.cutting_options)
    cutting_kept: Ref[Any] = of(part_slot_options.cutting_kept)

    # parts/slots.py
    slot_need: Ref[Mm] = of(part_slots.slot_need)
    slot_fall_at_end: Rows = of(part_slots.slot_fall_at_end)
    slot_first: Ref[Count] = of(part_slots.slot_first)
    slot_fall_greatest: Ref[Mm] = of(part_slots.slot_fall_greatest)
    slot_depth_at_crest: Ref[Mm] = of(part_slots.slot_depth_at_crest)
    slot_depth_setting: Ref[Mm] = of(part_slots.slot_depth_setting)
    slot_kerf_at_crest: Ref[Mm] = of(part_slots.slot_kerf_at_crest)
    slot_kerf_at_end: Rows = of(part_slots.slot_kerf_at_end)
    slot_depth_at_end: Rows = of(part_slots.slot_depth_at_end)
    slot_to_deepen: Rows = of(part_slots.slot_to_deepen)
    slot_left_at_crest: Rows = of(part_slots.slot_left_at_crest)
    slot_thickness_at_end: Rows = of(part_slots.slot_thickness_at_end)
    slot_left_at_treble_end: Rows = of(part_slots.slot_left_at_treble_end)
    slot_left_at_bass_end: Rows = of(part_slots.slot_left_at_bass_end)
    slot_left_at_end: Rows = of(part_slots.slot_left_at_end)
    slot_left_least: Rows = of(part_slots.slot_left_least)
    slot_thinnest_at_crest: Ref[Mm] = of(part_slots.slot_thinnest_at_crest)
    slot_thinnest_at_end: Ref[Mm] = of(part_slots.slot_thinnest_at_end)

    # parts/soundhole.py
    soundhole_centre: Ref[Mm] = of(part_soundhole.soundhole_centre)
    soundhole_from_zero: Ref[Mm] = of(part_soundhole.soundhole_from_zero)
    soundhole_edge_neck: Ref[Mm] = of(part_soundhole.soundhole_edge_neck)
    soundhole_area: Ref[Mm2] = of(part_soundhole.soundhole_area)
    soundhole_plug: Ref[Mm] = of(part_soundhole.soundhole_plug)
    soundhole_from_board: Ref[Mm] = of(part_soundhole.soundhole_from_board)
    rosette_rings: Members[RingRef, Ring] = of(part_soundhole.rosette_rings)

    # parts/string_lines.py
    string_pair_nut: Rows = of(part_string_lines.string_pair_nut)
    string_pair_bridge: Rows = of(part_string_lines.string_pair_bridge)
    string_y_nut: Rows = of(part_string_lines.string_y_nut)
    string_gap_nut: Rows = of(part_string_lines.string_gap_nut)
    string_y_bridge: Rows = of(part_string_lines.string_y_bridge)
    string_along_nut: Rows = of(part_string_lines.string_along_nut)
    string_spread_along_nut: Ref[Mm] = of(part_string_lines.string_spread_along_nut)
    string_along_saddle: Rows = of(part_string_lines.string_along_saddle)
    string_saddle_slant: Ref[Ratio] = of(part_string_lines.string_saddle_slant)
    string_scale_end_x: Rows = of(part_string_lines.string_scale_end_x)
    string_fraction: Rows = of(part_string_lines.string_fraction)
    string_y: Rows = of(part_string_lines.string_y)
    string_x: Rows = of(part_string_lines.string_x)
    string_splay: Rows = of(part_string_lines.string_splay)
    string_error: Rows = of(part_string_lines.string_error)
    string_margin_treble: Rows = of(part_string_lines.string_margin_treble)
    string_margin_bass: Rows = of(part_string_lines.string_margin_bass)

    # parts/template.py
    template_notch: Rows = of(part_template.template_notch)
    template_nut_notch: Ref[Mm] = of(part_template.template_nut_notch)
    template_notch_width: Ref[Mm] = of(part_template.template_notch_width)
    template_pin_reach: Ref[Mm] = of(part_template.template_pin_reach)
    template_pin_first: Ref[Mm] = of(part_template.template_pin_first)
    template_pin_last: Ref[Mm] = of(part_template.template_pin_last)
    template_matches: Members[TemplateMatchRef, TemplateMatch] = of(part_template.template_matches)

    # parts/tension.py
    string_length: Rows = of(part_tension.string_length)
    string_speaking_length: Rows = of(part_tension.string_speaking_length)
    string_core: Rows = of(part_tension.string_core)
    string_weight: Rows = of(part_tension.string_weight)
    string_pull: Rows = of(part_tension.string_pull)
    string_pull_on_scale: Rows = of(part_tension.string_pull_on_scale)
    string_pull_said: Ref[str] = of(part_tension.string_pull_said)
    string_pull_total: Ref[Newton] = of(part_tension.string_pull_total)
    string_pull_ratio: Ref[Ratio] = of(part_tension.string_pull_ratio)
    string_stress: Rows = of(part_tension.string_stress)
    string_stress_on_scale: Rows = of(part_tension.string_stress_on_scale)
    string_breaking: Rows = of(part_tension.string_breaking)
    string_reserve: Rows = of(part_tension.string_reserve)
    string_modulus: Rows = of(part_tension.string_modulus)
    string_modulus_least: Rows = of(part_tension.string_modulus_least)
    string_modulus_most: Rows = of(part_tension.string_modulus_most)
    string_elongation: Rows = of(part_tension.string_elongation)
    string_stretch: Rows = of(part_tension.string_stretch)
    string_stretch_least: Rows = of(part_tension.string_stretch_least)
    string_stretch_most: Rows = of(part_tension.string_stretch_most)
    string_stretch_length: Rows = of(part_tension.string_stretch_length)
    string_bending_radius: Rows = of(part_tension.string_bending_radius)

    # parts/thickness.py
    thickness_wedge: Ref[Mm] = of(part_thickness.thickness_wedge)
    thickness_wedge_angle: Ref[Radians] = of(part_thickness.thickness_wedge_angle)
    thickness_at_crest: Rows = of(part_thickness.thickness_at_crest)
    thickness_crest_at_slot_treble: Rows = of(part_thickness.thickness_crest_at_slot_treble)
    thickness_crest_at_slot_bass: Rows = of(part_thickness.thickness_crest_at_slot_bass)
    thickness_at_edge_treble: Rows = of(part_thickness.thickness_at_edge_treble)
    thickness_at_edge_bass: Rows = of(part_thickness.thickness_at_edge_bass)
    thickness_edge_spread: Ref[Mm] = of(part_thickness.thickness_edge_spread)
    thickness_before_levelling: Ref[Mm] = of(part_thickness.thickness_before_levelling)
    thickness_to_plane: Rows = of(part_thickness.thickness_to_plane)

    # parts/top_across.py
    across_station: Ref[Mm] = of(part_top_across.across_station)
    across_area: Ref[Mm2] = of(part_top_across.across_area)
    across_holders: Members[HolderRef, Holder] = of(part_top_across.across_holders)
    across_near: Members[HolderRef, Holder] = of(part_top_across.across_near)
    across_height: Ref[Mm] = of(part_top_across.across_height)
    across_height_near: Ref[Mm] = of(part_top_across.across_height_near)
    across_lean: Ref[Ratio] = of(part_top_across.across_lean)
    across_covered: Ref[Mm] = of(part_top_across.across_covered)
    across_unheld: Ref[str] = of(part_top_across.across_unheld)

    # parts/wire.py
    wire_line: Rows = of(part_wire.wire_line)
    wire_cut: Rows = of(part_wire.wire_cut)
    wire_total: Ref[Mm] = of(part_wire.wire_total)
    wire_nip_back: Ref[Mm] = of(part_wire.wire_nip_back)
    wire_bend_radius: Rows = of(part_wire.wire_bend_radius)
    wire_fits: Members[WireFitRef, WireFit] = of(part_wire.wire_fits)

    # setups/arching.py
    arching_radius_nut: Ref[Mm] = of(setups_arching.arching_radius_nut)
    arching_radius_middle: Ref[Mm] = of(setups_arching.arching_radius_middle)
    arching_radius_end: Ref[Mm] = of(setups_arching.arching_radius_end)
    arching_fall_middle: Ref[Mm] = of(setups_arching.arching_fall_middle)
    arching_edge_middle: Ref[Mm] = of(setups_arching.arching_edge_middle)

    # setups/board_binding.py
    setup_board_binding: SetupRef = of(setups_board_binding.setup_board_binding)

    # setups/body_binding.py
    setup_flush: SetupRef = of(setups_body_binding.setup_flush)
    setup_binding_bend: SetupRef = of(setups_body_binding.setup_binding_bend)
    setup_channels: SetupRef = of(setups_body_binding.setup_channels)
    setup_body_binding: SetupRef = of(setups_body_binding.setup_body_binding)

    # setups/body_work.py
    setup_mould: SetupRef = of(setups_body_work.setup_mould)
    setup_sides: SetupRef = of(setups_body_work.setup_sides)
    setup_brace_stock: SetupRef = of(setups_body_work.setup_brace_stock)
    setup_brace_top: SetupRef = of(setups_body_work.setup_brace_top)
    setup_bridge_plate: SetupRef = of(setups_body_work.setup_bridge_plate)
    setup_brace_back: SetupRef = of(setups_body_work.setup_brace_back)

    # setups/bridging.py
    setup_bridge: SetupRef = of(setups_bridging.setup_bridge)
    setup_saddle_slot: SetupRef = of(setups_bridging.setup_saddle_slot)
    setup_saddle: SetupRef = of(setups_bridging.setup_saddle)
    setup_strings: SetupRef = of(setups_bridging.setup_strings)
    setup_in_tune: SetupRef = of(setups_bridging.setup_in_tune)

    # setups/edging.py
    setup_taper: SetupRef = of(setups_edging.setup_taper)
    setup_ledge: SetupRef = of(setups_edging.setup_ledge)

    # setups/fretting.py
    setup_wire: SetupRef = of(setups_fretting.setup_wire)
    setup_markers: SetupRef = of(setups_fretting.setup_markers)
    setup_caliper: SetupRef = of(setups_fretting.setup_caliper)

    # setups/jig.py
    jig_taper: JigRef = of(setups_jig.jig_taper)
    jig_slots: JigRef = of(setups_jig.jig_slots)

    # setups/neck_carving.py
    setup_neck_blank: SetupRef = of(setups_neck_carving.setup_neck_blank)
    setup_neck_scarf: SetupRef = of(setups_neck_carving.setup_neck_scarf)
    setup_neck_rod: SetupRef = of(setups_neck_carving.setup_neck_rod)
    setup_neck_head: SetupRef = of(setups_neck_carving.setup_neck_head)
    setup_neck_carve: SetupRef = of(setups_neck_carving.setup_neck_carve)

    # setups/neck_joint.py
    setup_neck_joint: SetupRef = of(setups_neck_joint.setup_neck_joint)

    # setups/neck_set.py
    setup_neck_set: SetupRef = of(setups_neck_set.setup_neck_set)
    setup_nut_slots: SetupRef = of(setups_neck_set.setup_nut_slots)
    setup_relief: SetupRef = of(setups_neck_set.setup_relief)

    # setups/owner.py
    setup_owner_air: SetupRef = of(setups_owner.setup_owner_air)

    # setups/preparing.py
    setup_blank: SetupRef = of(setups_preparing.setup_blank)
    setup_layout: SetupRef = of(setups_preparing.setup_layout)
    setup_template: SetupRef = of(setups_preparing.setup_template)

    # setups/slotting.py
    setup_slot: SetupRef = of(setups_slotting.setup_slot)
    setup_deepen: SetupRef = of(setups_slotting.setup_deepen)

    # setups/station.py
    station_middle_fret: Ref[Count] = of(setups_station.station_middle_fret)
    station_fanned: Ref[bool] = of(setups_station.station_fanned)
    station_width_at_nut_end: Ref[Mm] = of(setups_station.station_width_at_nut_end)

    # setups/stop.py
    stop_stock: Ref[Mm] = of(setups_stop.stop_stock)
    stop_over_cradle: Ref[Mm] = of(setups_stop.stop_over_cradle)
    stop_thinnest_fret: Ref[Count] = of(setups_stop.stop_thinnest_fret)
    stop_deepest_fret: Ref[Count] = of(setups_stop.stop_deepest_fret)

    # setups/surfacing.py
    setup_arch: SetupRef = of(setups_surfacing.setup_arch)
    setup_level: SetupRef = of(setups_surfacing.setup_level)

    # setups/taper.py
    taper_half_width_nut: Ref[Mm] = of(setups_taper.taper_half_width_nut)
    taper_half_width_tail: Ref[Mm] = of(setups_taper.taper_half_width_tail)
    taper_centre_nut: Ref[Mm] = of(setups_taper.taper_centre_nut)
    taper_centre_tail: Ref[Mm] = of(setups_taper.taper_centre_tail)
    taper_corner_nut: Ref[Mm] = of(setups_taper.taper_corner_nut)
    taper_corner_tail: Ref[Mm] = of(setups_taper.taper_corner_tail)
    taper_edge_nut: Ref[Mm] = of(setups_taper.taper_edge_nut)
    taper_edge_tail: Ref[Mm] = of(setups_taper.taper_edge_tail)
    feed_agreeing_edge: Ref[str] = of(setups_taper.feed_agreeing_edge)
    feed_other_edge: Ref[str] = of(setups_taper.feed_other_edge)

    # top/back.py
    rear_bars: Members[BarRef, Bar] = of(top_back.rear_bars)
    rear_plate: Members[Ref[Braced], Braced] = of(top_back.rear_plate)
    rear_coarse: Members[Ref[Attempt], Attempt] = of(top_back.rear_coarse)
    rear_fine: Members[Ref[Attempt], Attempt] = of(top_back.rear_fine)
    rear_modes: Members[ModeRef, Mode] = of(top_back.rear_modes)

    # top/model.py
    braced_bars: Members[BarRef, Bar] = of(top_model.braced_bars)
    braced_blocks: Members[Ref[BlockBlock], BlockBlock] = of(top_model.braced_blocks)
    braced_pulls: Members[Ref[Pull], Pull] = of(top_model.braced_pulls)
    braced_plate: Members[Ref[Plate], Plate] = of(top_model.braced_plate)
    braced_top: Members[Ref[Braced], Braced] = of(top_model.braced_top)
    braced_coarse: Members[Ref[Attempt], Attempt] = of(top_model.braced_coarse)
    braced_fine: Members[Ref[Attempt], Attempt] = of(top_model.braced_fine)
    braced_quick: Members[Ref[Solved], Solved] = of(top_model.braced_quick)
    braced_final: Members[Ref[Solved], Solved] = of(top_model.braced_final)

    # top/modes.py
    mode_pictures: Members[Ref[ModePicture], ModePicture] = of(top_modes.mode_pictures)
    mode_list: Members[ModeRef, Mode] = of(top_modes.mode_list)
    mode_near: Members[NearPairRef, NearPair] = of(top_modes.mode_near)
    mode_with_air: Members[TwoMassRef, TwoMass] = of(top_modes.mode_with_air)
    mode_air_lower: Ref[Hertz] = of(top_modes.mode_air_lower)
    mode_air_upper: Ref[Hertz] = of(top_modes.mode_air_upper)
    mode_first_supported: Ref[Hertz] = of(top_modes.mode_first_supported)

    # top/pictures.py
    piece_top_small: Members[Ref[Any], Any] = of(top_pictures.piece_top_small)
    drawing_top_modes: DrawingRef = of(top_pictures.drawing_top_modes)
    piece_top_mode_signs: Members[DrawingRef, Drawing] = of(top_pictures.piece_top_mode_signs)
    drawing_setup_voice: DrawingRef = of(top_pictures.drawing_setup_voice)

    # top/pull.py
    pulled_turn: Ref[Radians] = of(top_pull.pulled_turn)
    pulled_turn_within: Ref[Radians] = of(top_pull.pulled_turn_within)
    pulled_spread: Ref[Ratio] = of(top_pull.pulled_spread)
    pulled_turn_least: Ref[Radians] = of(top_pull.pulled_turn_least)
    pulled_turn_most: Ref[Radians] = of(top_pull.pulled_turn_most)
    pulled_turn_supported: Ref[Radians] = of(top_pull.pulled_turn_supported)
    pulled_sink: Ref[Mm] = of(top_pull.pulled_sink)
    pulled_sink_within: Ref[Mm] = of(top_pull.pulled_sink_within)
    pulled_sink_x: Ref[Mm] = of(top_pull.pulled_sink_x)
    pulled_rise: Ref[Mm] = of(top_pull.pulled_rise)
    pulled_rise_within: Ref[Mm] = of(top_pull.pulled_rise_within)
    pulled_rise_x: Ref[Mm] = of(top_pull.pulled_rise_x)
    pulled_lift: Ref[Mm] = of(top_pull.pulled_lift)
    pulled_action: Ref[Mm] = of(top_pull.pulled_action)
    pulled_turn_crept_least: Ref[Radians] = of(top_pull.pulled_turn_crept_least)
    pulled_turn_crept_most: Ref[Radians] = of(top_pull.pulled_turn_crept_most)
    pulled_turn_dry: Ref[Radians] = of(top_pull.pulled_turn_dry)
    pulled_turn_damp: Ref[Radians] = of(top_pull.pulled_turn_damp)
    pulled_strain_top: Ref[Ratio] = of(top_pull.pulled_strain_top)
    pulled_strain_brace: Ref[Ratio] = of(top_pull.pulled_strain_brace)
    pulled_strained_brace: Ref[str] = of(top_pull.pulled_strained_brace)
    pulled_said: Ref[str] = of(top_pull.pulled_said)

    # top/pushing.py
    push_list: Members[PushToldRef, PushTold] = of(top_pushing.push_list)

    # top/shaving.py
    shaving_groups: Members[Members[Ref[str], str], tuple[str, ...]] = of(top_shaving.shaving_groups)
    shaving_changes: Members[Ref[Changes], Changes] = of(top_shaving.shaving_changes)
    shaving_list: Members[ShavingRef, Shaving] = of(top_shaving.shaving_list)
    shaving_step: Ref[Mm] = of(top_shaving.shaving_step)
    shaving_thickness: Members[ShavingRef, Shaving] = of(top_shaving.shaving_thickness)

    # top/sheets.py
    setup_top_under_strings: SetupRef = of(top_sheets.setup_top_under_strings)
    setup_voice_top: SetupRef = of(top_sheets.setup_voice_top)

    # top/verdicts.py
    finding_top_solved: Members[FindingRef, Finding] = of(top_verdicts.finding_top_solved)
    finding_top_turn: Members[FindingRef, Finding] = of(top_verdicts.finding_top_turn)
    finding_top_strain: Members[FindingRef, Finding] = of(top_verdicts.finding_top_strain)
    finding_top_action: Members[FindingRef, Finding] = of(top_verdicts.finding_top_action)
    finding_top_modes: Members[FindingRef, Finding] = of(top_verdicts.finding_top_modes)
    finding_tried_wood: Members[FindingRef, Finding] = of(top_verdicts.finding_tried_wood)

    # top/woods.py
    fitted_pieces: Members[TriedWoodRef, TriedWood] = of(top_woods.fitted_pieces)
    fitted_top: TimberKnownRef = of(top_woods.fitted_top)
    fitted_braces: TimberKnownRef = of(top_woods.fitted_braces)
else:

    def __getattr__(name: str) -> Ref[Any]:
        if name.startswith("_"):
            raise AttributeError(name)
        return Ref(name)
