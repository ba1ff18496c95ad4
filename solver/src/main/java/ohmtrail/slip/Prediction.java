package ohmtrail.slip;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.circuit.Joint;
import ohmtrail.predict.Evaluation;
import ohmtrail.predict.JointResponse;
import ohmtrail.predict.Parameters;
import ohmtrail.predict.SurveyModel;
import ohmtrail.problem.Problem;

/**
 * What the readings of a problem would be, sound or with ohms in one joint. Belongs to one thread.
 */
sealed interface Prediction {
  /** The joints that ohms can be put in. */
  List<Joint> joints();

  /** A buffer of the right size. */
  Evaluation buffer();

  /** The sound circuit, everything as stated. */
  void sound(Evaluation into);

  /** Readings alone, with ohms in the joint of that place. */
  void volts(int joint, double ohms, double[] into);

  /** Readings and slopes, with ohms in the joint of that place. */
  void evaluate(int joint, double ohms, Evaluation into);

  /** Of one problem. */
  final class OfProblem implements Prediction {
    private final SurveyModel model;
    private final List<Joint> joints;
    private final List<JointResponse> responses = new ArrayList<>();

    OfProblem(Problem problem, List<Joint> joints) {
      this.joints = List.copyOf(joints);
      Parameters parameters =
          Parameters.of(problem.circuit(), problem.survey(), problem.assumptions());
      this.model =
          SurveyModel.of(
              problem.circuit(),
              problem.survey(),
              problem.assumptions(),
              parameters,
              parameters.nominalPoint(),
              joints,
              List.of());
    }

    @Override
    public List<Joint> joints() {
      return joints;
    }

    @Override
    public Evaluation buffer() {
      return model.buffer();
    }

    @Override
    public void sound(Evaluation into) {
      model.evaluate(into);
    }

    @Override
    public void volts(int joint, double ohms, double[] into) {
      response(joint).volts(ohms, into);
    }

    @Override
    public void evaluate(int joint, double ohms, Evaluation into) {
      response(joint).sweep().evaluate(ohms, into);
    }

    private JointResponse response(int joint) {
      if (responses.isEmpty()) {
        joints.forEach(each -> responses.add(model.respond(each)));
      }
      return responses.get(joint);
    }
  }

  /** Some readings as one problem has them and the rest as another with the same parameters. */
  final class Mixed implements Prediction {
    private final Prediction first;
    private final Prediction second;
    private final boolean[] fromSecond;
    private final double[] volts;
    private final Evaluation evaluation;

    Mixed(Prediction first, Prediction second, boolean[] fromSecond) {
      this.first = first;
      this.second = second;
      this.fromSecond = fromSecond.clone();
      this.volts = new double[fromSecond.length];
      this.evaluation = second.buffer();
    }

    @Override
    public List<Joint> joints() {
      return first.joints();
    }

    @Override
    public Evaluation buffer() {
      return first.buffer();
    }

    @Override
    public void sound(Evaluation into) {
      first.sound(into);
      second.sound(evaluation);
      mix(into);
    }

    @Override
    public void volts(int joint, double ohms, double[] into) {
      first.volts(joint, ohms, into);
      second.volts(joint, ohms, volts);
      for (int r = 0; r < into.length; r++) {
        into[r] = fromSecond[r] ? volts[r] : into[r];
      }
    }

    @Override
    public void evaluate(int joint, double ohms, Evaluation into) {
      first.evaluate(joint, ohms, into);
      second.evaluate(joint, ohms, evaluation);
      mix(into);
    }

    private void mix(Evaluation into) {
      int width = into.parameters();
      for (int r = 0; r < fromSecond.length; r++) {
        if (fromSecond[r]) {
          into.volts()[r] = evaluation.volts()[r];
          into.perSupply()[r] = evaluation.perSupply()[r];
          into.ohmsSlope()[r] = evaluation.ohmsSlope()[r];
          System.arraycopy(evaluation.jacobian(), r * width, into.jacobian(), r * width, width);
        }
      }
    }
  }
}
