package org.girandole.plan.rules;

import java.util.List;
import java.util.stream.Stream;
import org.girandole.plan.rules.distance.BurstTooLow;
import org.girandole.plan.rules.distance.ChargeLimit;
import org.girandole.plan.rules.distance.DistanceUnverified;
import org.girandole.plan.rules.distance.FalloutOutside;
import org.girandole.plan.rules.distance.FalloutUnchecked;
import org.girandole.plan.rules.distance.PositionOutside;
import org.girandole.plan.rules.distance.PositionTooClose;
import org.girandole.plan.rules.distance.Protect;
import org.girandole.plan.rules.distance.Separation;
import org.girandole.plan.rules.distance.SeparationUnchecked;
import org.girandole.plan.rules.distance.WindLimit;
import org.girandole.plan.rules.hardware.AddressTaken;
import org.girandole.plan.rules.hardware.CircuitUnchecked;
import org.girandole.plan.rules.hardware.CurrentTooLow;
import org.girandole.plan.rules.hardware.FiringSystemMissing;
import org.girandole.plan.rules.hardware.IgniterMissing;
import org.girandole.plan.rules.hardware.IgniterMixed;
import org.girandole.plan.rules.hardware.LeadTooLong;
import org.girandole.plan.rules.hardware.ModuleElsewhere;
import org.girandole.plan.rules.hardware.ModuleFactsMissing;
import org.girandole.plan.rules.hardware.NoPin;
import org.girandole.plan.rules.hardware.NoSparePins;
import org.girandole.plan.rules.hardware.PinOutOfRange;
import org.girandole.plan.rules.hardware.PinTaken;
import org.girandole.plan.rules.hardware.PinsTooClose;
import org.girandole.plan.rules.hardware.TestCurrentTooHigh;
import org.girandole.plan.rules.hardware.TooManyAtOnce;
import org.girandole.plan.rules.hardware.TooManyIgniters;
import org.girandole.plan.rules.housekeeping.CueDoubled;
import org.girandole.plan.rules.housekeeping.EmptyShow;
import org.girandole.plan.rules.housekeeping.ShowUndated;
import org.girandole.plan.rules.housekeeping.TableUnwritable;
import org.girandole.plan.rules.housekeeping.UnusedEffect;
import org.girandole.plan.rules.loading.CalibreMissing;
import org.girandole.plan.rules.loading.MortarTooShort;
import org.girandole.plan.rules.loading.NoTube;
import org.girandole.plan.rules.loading.RackElsewhere;
import org.girandole.plan.rules.loading.RackLightBesideHeavy;
import org.girandole.plan.rules.loading.RackMixedChain;
import org.girandole.plan.rules.loading.RackOverfull;
import org.girandole.plan.rules.loading.RackSpacing;
import org.girandole.plan.rules.loading.TubeCalibre;
import org.girandole.plan.rules.loading.TubeLengthMissing;
import org.girandole.plan.rules.loading.TubeOutOfRange;
import org.girandole.plan.rules.loading.TubeTaken;
import org.girandole.plan.rules.loading.TubeTilt;
import org.girandole.plan.rules.stock.ChargeMissing;
import org.girandole.plan.rules.stock.EstimatedValue;
import org.girandole.plan.rules.stock.HazardMissing;
import org.girandole.plan.rules.stock.LotMissing;
import org.girandole.plan.rules.stock.StockShort;
import org.girandole.plan.rules.sync.AudioChanged;
import org.girandole.plan.rules.sync.AudioDamaged;
import org.girandole.plan.rules.sync.AudioLength;
import org.girandole.plan.rules.sync.AudioMissing;
import org.girandole.plan.rules.sync.AudioUnheard;
import org.girandole.plan.rules.sync.LengthMissing;
import org.girandole.plan.rules.sync.PrerollShort;
import org.girandole.plan.rules.sync.RehearsalImpossible;
import org.girandole.plan.rules.sync.RehearsalUnmet;
import org.girandole.plan.rules.sync.SlotClash;
import org.girandole.plan.rules.sync.TimecodeMissing;
import org.girandole.plan.rules.sync.TimecodeOverlap;
import org.girandole.plan.rules.sync.TimecodeRate;
import org.girandole.plan.rules.sync.TimecodeWraps;
import org.girandole.plan.rules.timing.ChainOverruns;
import org.girandole.plan.rules.timing.CueOutsideSection;
import org.girandole.plan.rules.timing.FiresBeforeTimecode;
import org.girandole.plan.rules.timing.FiresInPreroll;
import org.girandole.plan.rules.timing.HoldDebris;
import org.girandole.plan.rules.timing.HoldViolated;
import org.girandole.plan.rules.timing.MarkUnordered;
import org.girandole.plan.rules.timing.OffMark;
import org.girandole.plan.rules.timing.OutsideMusic;
import org.girandole.plan.rules.timing.RiseUncertain;
import org.girandole.plan.rules.timing.ScatterMissing;
import org.girandole.plan.rules.timing.SectionOutside;
import org.girandole.plan.rules.timing.SilenceUnderFinale;
import org.girandole.plan.rules.timing.StepTooCoarse;
import org.girandole.plan.rules.timing.SyncMissing;
import org.girandole.plan.schedule.Troubles;

/**
 * Every rule there is, named one by one: a rule that is not in this list does not run, and a test sees to it that each has its page
 * and its fixtures.
 */
public final class Rules {
    private static final List<Rule> ALL = List.of(
            // timing
            new FiresBeforeTimecode(), new FiresInPreroll(), new OutsideMusic(), new OffMark(), new RiseUncertain(),
            new ScatterMissing(), new SyncMissing(), new StepTooCoarse(), new ChainOverruns(), new HoldViolated(), new HoldDebris(),
            new SilenceUnderFinale(), new MarkUnordered(), new SectionOutside(), new CueOutsideSection(),
            // hardware
            new PinTaken(), new PinOutOfRange(), new PinsTooClose(), new TooManyAtOnce(), new TooManyIgniters(),
            new CurrentTooLow(), new TestCurrentTooHigh(), new CircuitUnchecked(), new IgniterMissing(), new IgniterMixed(),
            new ModuleElsewhere(), new LeadTooLong(), new NoPin(), new NoSparePins(), new AddressTaken(),
            new ModuleFactsMissing(), new FiringSystemMissing(),
            // loading
            new TubeTaken(), new TubeOutOfRange(), new RackElsewhere(), new TubeCalibre(), new CalibreMissing(), new TubeTilt(),
            new RackSpacing(), new RackOverfull(), new RackMixedChain(), new RackLightBesideHeavy(), new NoTube(), new MortarTooShort(),
            new TubeLengthMissing(),
            // distance
            new SeparationUnchecked(), new Separation(), new Protect(), new DistanceUnverified(), new PositionOutside(), new PositionTooClose(), new BurstTooLow(), new WindLimit(),
            new FalloutUnchecked(), new FalloutOutside(), new ChargeLimit(),
            // stock
            new StockShort(), new LotMissing(), new HazardMissing(), new ChargeMissing(), new EstimatedValue(),
            // sync
            new TimecodeMissing(), new TimecodeRate(), new TimecodeWraps(), new TimecodeOverlap(), new PrerollShort(),
            new AudioMissing(), new AudioDamaged(), new AudioUnheard(), new AudioChanged(), new AudioLength(), new LengthMissing(), new SlotClash(),
            new RehearsalImpossible(), new RehearsalUnmet(),
            // housekeeping
            new UnusedEffect(), new CueDoubled(), new ShowUndated(), new EmptyShow(), new TableUnwritable());

    private Rules() {
    }

    /** The rules, family by family, in the order in which they run. */
    public static List<Rule> all() {
        return ALL;
    }

    /** What all findings of a plan can be about: the rules, the planner's own troubles, and what the checker says of waivers. */
    public static List<RuleInfo> infos() {
        return Stream.of(ALL.stream().map(Rule::info), Troubles.all().stream(), Checker.OWN.stream()).flatMap(all -> all).toList();
    }
}
