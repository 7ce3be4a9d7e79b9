package trayward.host.app;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** What a staged tray says. Its numbers are invented; its fields are the status's. Stateless. */
final class StagedStatus {

  private static final ObjectMapper JSON = new ObjectMapper();

  static final String HOLDING =
      """
      {'state':'HOLDING','state_words':'holding','bath_c':38.5,'bath_uncertainty_k':0.5,'set_c':38.5,
       'duty':0.43,'heater_on':true,'fan_commanded':true,'fan_proven':true,'fan_rpm':1500,
       'plate_c':45.2,'plate_uncertainty_k':0.5,'liquid_l':1.02,'level':'WELL','simulated':true,
       'presence_due_s':1800,'alarms':[],'withheld':[],'first_out':null,'log_ok':true,
       'current_print':null,'last_print':null,'forecast':null}
      """;

  static final String BEFORE =
      """
      {'moment':'emergence','start_watching':'start watching from 3:10','expected_s':215,
       'window_80_s':[190.4,244.6],'window_95_s':[170.1,268],'open':false,'prints':12,
       'how_sure':'','words':'','caveats':['bromide not told']}
      """;

  static final String PULL =
      """
      {'moment':'pull','start_watching':'start watching from 4:50','expected_s':315,'print':3,
       'window_80_s':[290,340],'window_95_s':[270,371],'open':false,'prints':1,
       'how_sure':'','words':'','caveats':[]}
      """;

  static final String REFUSED =
      "{'words':'','refused':'no valid bath reading for too long: the watch no longer knows'}";

  static final String ALARM =
      """
      [{'cause':'PRESENCE_DUE','state':'UNACKNOWLEDGED','latched':false,'priority_words':'act soon',
        'requirement':'SR-15','meaning':'Nobody was seen for 45 minutes.','why':'Heat is attended.',
        'action':'Touch the page, the pedal or the button.'}]
      """;

  private StagedStatus() {}

  static ObjectNode json(String text) throws Exception {
    return (ObjectNode) JSON.readTree(text.replace('\'', '"'));
  }

  static ObjectNode with(ObjectNode node, String field, String value) throws Exception {
    node.set(field, JSON.readTree(value.replace('\'', '"')));
    return node;
  }

  /** Print 3 in the developer for so long, seconds; emergence marked where it came before. */
  static ObjectNode inDeveloper(double elapsedS, String forecast) throws Exception {
    String emergence = elapsedS > 205 ? ",{'kind':'emergence','elapsed_s':205}" : "";
    String print =
        "{'id':3,'elapsed_s':" + elapsedS + ",'marks':[{'kind':'in','elapsed_s':0}" + emergence;
    return with(with(json(HOLDING), "current_print", print + "]}"), "forecast", forecast);
  }

  static String ofPrint(String forecast) {
    return forecast.replace("{'moment'", "{'print':3,'moment'");
  }
}
